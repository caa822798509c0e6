import type { Limits } from '../boat/limits.ts';
import type { Piece } from '../passage/pieces.ts';
import type { WeatherPaths } from './weather-paths.ts';
import { GUST_ERROR, type HourlyWeather } from './weather-table.ts';

/** What can stand in the way of a departure. The place in the list is its code. */
export const HINDRANCES = [
  'none',
  'wind',
  'headwind',
  'sector',
  'gust',
  'seas',
  'short seas',
  'squalls',
  'warning',
  'small craft',
  'not said',
  'past forecast',
  'daylight',
  'gate',
] as const;
export type Hindrance = (typeof HINDRANCES)[number];
const code = (hindrance: Hindrance): number => HINDRANCES.indexOf(hindrance);
/** Bits of a code beside an hour. */
export const CODE_BITS = 4;

/** Wind this far over its limit fails at once, kn (model 8). */
const FAR_OVER_KN = 5;
/** Wind within so many degrees of the bow is a headwind (words: headwind). */
const HEADWIND_DEG = 60;
/** Motored to windward: forward of the beam within so many degrees of the bow (model 2). */
const TO_WINDWARD_DEG = 45;
/** Seas up to this height are not asked their period, m (model 8). */
const SMALL_SEAS_M = 1;

/** Every hour of one leg's weather, judged for every simulated passage. Arrays are `[hour * count + i]`, with one hour more at the end. */
export interface LegWeather {
  /** The first hour from this one on that fails at once, and why: `hour << CODE_BITS | code`. Past the last hour: none does. */
  readonly firstBreach: Uint16Array;
  /** Hours from this one on with the wind over its limit. */
  readonly hoursOver: Uint16Array;
  /** Engine hours from this one on. */
  readonly motored: Float32Array;
}

export interface LegInput {
  readonly weather: HourlyWeather;
  readonly piece: Pick<Piece, 'courseDeg' | 'sectors'>;
  readonly limits: Limits;
  readonly motorBelow: number;
  readonly motorToWindward: boolean;
  /** Share of an hour motored where the forecast says no wind, one a passage. */
  readonly share: Float64Array;
  readonly paths: WeatherPaths;
}

export function legWeather(input: LegInput): LegWeather {
  const { weather, paths } = input;
  const { count } = paths;
  const size = (weather.hours + 1) * count;
  const firstBreach = new Uint16Array(size).fill(weather.hours << CODE_BITS, size - count);
  const hoursOver = new Uint16Array(size);
  const motored = new Float32Array(size);
  const judgeHour = hourJudge(input);
  for (let hour = weather.hours - 1; hour >= 0; hour -= 1)
    judgeHour(hour, { firstBreach, hoursOver, motored });
  return { firstBreach, hoursOver, motored };
}

/** Judges one hour for all passages, from the hour after it. */
function hourJudge(input: LegInput): (hour: number, into: LegWeather) => void {
  const { weather, limits, motorBelow, motorToWindward, share, paths, piece } = input;
  const { count } = paths;
  const windLimit = limits.wind === false ? Infinity : (limits.wind ?? Infinity);
  const gustLimit = limits.gust ?? Infinity;
  const byDirection = limits.headwind !== undefined || piece.sectors.length > 0 || motorToWindward;
  return (hour, { firstBreach, hoursOver, motored }) => {
    const at = hour * count;
    const next = at + count;
    const [wind, windSd] = [weather.wind[hour]!, weather.windSd[hour]!];
    const [gust, gustSd] = [weather.gust[hour]!, GUST_ERROR * windSd];
    const [seas, seasSd] = [weather.seas[hour]!, weather.seasSd[hour]!];
    const [seasLimit, seasCode] = seasLimitAt(limits, weather.period[hour]!);
    const barred = barredBy(weather, limits, hour);
    const direction = byDirection ? directionJudge(input, hour) : null;
    for (let i = 0; i < count; i += 1) {
      const error = paths.wind[at + i]!;
      const blowing = Math.max(0, wind + windSd * error);
      let breach = barred;
      let limit = windLimit;
      let over: number = code('wind');
      let toWindward = false;
      let sectorSeas = Infinity;
      if (direction !== null) {
        const by = direction(i);
        if (by.wind < limit) {
          limit = by.wind;
          over = by.code;
        }
        sectorSeas = by.seas;
        toWindward = by.toWindward;
      }
      if (blowing > limit + FAR_OVER_KN) breach ||= over;
      if (gust + gustSd * error > gustLimit) breach ||= code('gust');
      const height = seas + seasSd * paths.seas[at + i]!;
      if (height > seasLimit) breach ||= seasCode;
      if (height > sectorSeas) breach ||= code('sector');
      firstBreach[at + i] = breach === 0 ? firstBreach[next + i]! : (hour << CODE_BITS) | breach;
      hoursOver[at + i] = hoursOver[next + i]! + (blowing > limit ? 1 : 0);
      const engine = Number.isNaN(wind) ? share[i]! : blowing < motorBelow || toWindward ? 1 : 0;
      motored[at + i] = motored[next + i]! + engine;
    }
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

interface ByDirection {
  wind: number;
  code: number;
  seas: number;
  toWindward: boolean;
}

/** The limits that go by where the wind comes from. Where that is not said it is taken to come from ahead, and from every sector. */
function directionJudge(
  { weather, piece, limits, motorToWindward, paths }: LegInput,
  hour: number,
): (i: number) => ByDirection {
  const { courseDeg, sectors } = piece;
  const [dir, dirSd] = [weather.dir[hour]!, weather.dirSd[hour]!];
  const headwind = limits.headwind ?? Infinity;
  const result: ByDirection = { wind: Infinity, code: 0, seas: Infinity, toWindward: false };
  return (i) => {
    const from = dir + dirSd * paths.direction[hour * paths.count + i]!;
    const offBow = Math.abs(between(from, courseDeg));
    const known = !Number.isNaN(from);
    result.wind = !known || offBow < HEADWIND_DEG ? headwind : Infinity;
    result.code = code('headwind');
    result.seas = Infinity;
    result.toWindward = motorToWindward && known && offBow < TO_WINDWARD_DEG;
    for (const sector of sectors) {
      if (known && !isWithin(from, sector)) continue;
      if (sector.wind !== undefined && sector.wind < result.wind) {
        result.wind = sector.wind;
        result.code = code('sector');
      }
      if (sector.seas !== undefined) result.seas = Math.min(result.seas, sector.seas);
    }
    return result;
  };
}

/** From one bearing to another the short way, -180..180 degrees. */
function between(a: number, b: number): number {
  const turn = a - b;
  return turn - 360 * Math.round(turn / 360);
}

/** Whether a bearing lies clockwise from `from` to `to`. */
export function isWithin(
  bearing: number,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  const turn = (x: number) => ((x % 360) + 360) % 360;
  return turn(bearing - from) <= turn(to - from);
}
