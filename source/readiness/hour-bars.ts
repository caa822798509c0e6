import type { Limits } from '../boat/limits.ts';
import type { Piece } from '../passage/pieces.ts';
import { CODE_BITS, code } from './hindrances.ts';
import { GUST_ERROR, type HourlyWeather } from './weather-table.ts';

/** Wind this far over its limit fails at once, kn (model 8). */
const FAR_OVER_KN = 5;
/** Seas up to this height are not asked their period, m (judgement: a metre of sea is short anywhere). */
export const SMALL_SEAS_M = 1;

interface BarsInput {
  readonly weather: HourlyWeather;
  readonly courseDeg: number;
  readonly limits: Limits;
  readonly motorBelow: number;
}

/** One hour of a leg as bars for the passages' errors: above them it fails. Errors are in their own standard deviations. */
export interface HourBars {
  /** What stands in the way of all, as `hour << CODE_BITS | code`; 0 for nothing. */
  readonly barred: number;
  readonly overError: number;
  readonly farOverError: number;
  readonly gustError: number;
  readonly seasError: number;
  readonly seasCode: number;
  /** Below it she motors. */
  readonly calmError: number;
  readonly headwindError: number;
  readonly farHeadwindError: number;
  readonly windSaid: boolean;
  /** The wind's direction less the course, and one sd of it, degrees. */
  readonly turned: number;
  readonly dirSd: number;
}

/** What the skipper's limits and the forecast make of one hour. `motorBelow` in knots. */
export function hourBars({ weather, courseDeg, limits, motorBelow }: BarsInput, hour: number): HourBars {
  const [wind, windSd] = [weather.wind[hour]!, weather.windSd[hour]!];
  const windLimit = limits.wind === false ? Infinity : (limits.wind ?? Infinity);
  const headwindLimit = limits.headwind ?? Infinity;
  const [seasLimit, seasCode] = seasLimitAt(limits, weather.period[hour]!);
  const barred = barredBy(weather, limits, hour);
  return {
    barred: barred === 0 ? 0 : (hour << CODE_BITS) | barred,
    overError: (windLimit - wind) / windSd,
    farOverError: (windLimit + FAR_OVER_KN - wind) / windSd,
    gustError: ((limits.gust ?? Infinity) - weather.gust[hour]!) / (GUST_ERROR * windSd),
    seasError: (seasLimit - weather.seas[hour]!) / weather.seasSd[hour]!,
    seasCode,
    calmError: (motorBelow - wind) / windSd,
    headwindError: (headwindLimit - wind) / windSd,
    farHeadwindError: (headwindLimit + FAR_OVER_KN - wind) / windSd,
    windSaid: !Number.isNaN(wind),
    turned: weather.dir[hour]! - courseDeg,
    dirSd: weather.dirSd[hour]!,
  };
}

/** What stands in the way of everyone in that hour; 0 for nothing. Past the end of the forecast is told apart, by the departure. */
function barredBy(weather: HourlyWeather, limits: Limits, hour: number): number {
  if (hour >= weather.endHour) return 0;
  if (weather.gale[hour]) return code('warning');
  if (weather.squallLine[hour]) return code('squalls');
  return weather.smallCraft[hour] && limits.smallCraft === 'stop' ? code('small craft') : 0;
}

/** For every hour the first from it on of which the forecast leaves out what the skipper has a limit for; past the last hour: none. */
export function unsaidHours(weather: HourlyWeather, limits: Limits, sectors: Piece['sectors']): Uint16Array {
  const wind =
    limits.wind !== false || limits.headwind !== undefined || sectors.some((one) => one.wind !== undefined);
  const seas =
    limits.seas !== false ||
    limits.periodPerMetre !== undefined ||
    sectors.some((one) => one.seas !== undefined);
  const { hours, endHour } = weather;
  const first = new Uint16Array(hours + 1).fill(hours);
  for (let hour = hours - 1; hour >= 0; hour -= 1) {
    const missing =
      (wind && Number.isNaN(weather.wind[hour]!)) ||
      (limits.gust !== undefined && Number.isNaN(weather.gust[hour]!)) ||
      (seas && Number.isNaN(weather.seas[hour]!));
    first[hour] = missing && hour < endHour ? hour : first[hour + 1]!;
  }
  return first;
}

/** The lower of the skipper's limit and the height that is too short for its period. A period not said does not bar. */
function seasLimitAt(limits: Limits, period: number): readonly [metres: number, code: number] {
  const limit = limits.seas === false ? Infinity : (limits.seas ?? Infinity);
  const short =
    limits.periodPerMetre === undefined || Number.isNaN(period)
      ? Infinity
      : Math.max(SMALL_SEAS_M, period / limits.periodPerMetre);
  return short < limit ? [short, code('short seas')] : [limit, code('seas')];
}
