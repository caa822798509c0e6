import type { Limits } from '../boat/limits.ts';
import { CODE_BITS, code } from './hindrances.ts';
import { GUST_ERROR, type HourlyWeather } from './weather-table.ts';

/** Wind this far over its limit fails at once, kn (model 8). */
const FAR_OVER_KN = 5;
/** Seas up to this height are not asked their period, m (model 8). */
const SMALL_SEAS_M = 1;

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

/** What stands in the way of everyone in that hour; 0 for nothing. Wind and seas not said bar; past the end of the forecast is told apart, by the departure. */
function barredBy(weather: HourlyWeather, limits: Limits, hour: number): number {
  if (hour >= weather.endHour) return 0;
  if (weather.gale[hour]) return code('warning');
  if (weather.squallLine[hour]) return code('squalls');
  if (weather.smallCraft[hour] && limits.smallCraft === 'stop') return code('small craft');
  const windMissing = limits.wind !== false && Number.isNaN(weather.wind[hour]!);
  const seasMissing = limits.seas !== false && Number.isNaN(weather.seas[hour]!);
  return windMissing || seasMissing ? code('not said') : 0;
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
