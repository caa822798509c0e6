import type { Limits } from '../boat/limits.ts';
import type { Piece } from '../passage/pieces.ts';
import { either } from './either.ts';
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
const codes = new Map(HINDRANCES.map((hindrance, place) => [hindrance, place]));

export function code(hindrance: Hindrance): number {
  return codes.get(hindrance)!;
}

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

/** Hours are judged backwards, each on top of the one after it, so that a departure reads off what lies ahead of it. */
export function legWeather(input: LegInput): LegWeather {
  const { count, hours } = input.paths;
  const size = (hours + 1) * count;
  const firstBreach = new Uint16Array(size).fill(hours << CODE_BITS, size - count);
  const hoursOver = new Uint16Array(size);
  const motored = new Float32Array(size);
  const into = { firstBreach, hoursOver, motored };
  const all = sharings(input);
  for (let hour = hours - 1; hour >= 0; hour -= 1)
    for (const sharing of all) {
      judgeHour(sharing, hourBars(sharing, hour), hour, into);
      for (const sector of input.piece.sectors) judgeSector(sharing, sector, hour, firstBreach);
    }
  return into;
}

/** The passages that meet one weather: every `step`th from `first` on. */
interface Sharing extends LegInput {
  readonly first: number;
  readonly step: number;
}

/** Passage i meets member i mod M of an ensemble of M. */
function sharings(input: LegInput): readonly Sharing[] {
  const { members } = input.weather;
  if (members.length === 0) return [{ ...input, first: 0, step: 1 }];
  return members.map((weather, first) => ({ ...input, weather, first, step: members.length }));
}

/** One hour of a leg as bars for the passages' errors: above them it fails. Errors are in their own standard deviations. */
interface HourBars {
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
}

function hourBars({ weather, limits, motorBelow }: LegInput, hour: number): HourBars {
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
  };
}

/** Everything but the sectors. Where the direction is not said, the wind is taken to come from ahead. */
function judgeHour(input: Sharing, bars: HourBars, hour: number, into: LegWeather): void {
  const { weather, piece, motorToWindward, paths, share, first, step } = input;
  const { count, wind, seas, direction } = paths;
  const { firstBreach, hoursOver, motored } = into;
  const { overError, farOverError, gustError, seasError, calmError } = bars;
  const { headwindError, farHeadwindError } = bars;
  const [turned, dirSd] = [weather.dir[hour]! - piece.courseDeg, weather.dirSd[hour]!];
  const unknown = Number(Number.isNaN(turned));
  const windwardError = motorToWindward ? calmError : Infinity;
  const mark = hour << CODE_BITS;
  const [far, gust, high] = [mark | code('wind'), mark | code('gust'), mark | bars.seasCode];
  const farAhead = mark | code('headwind');
  const [at, end] = [hour * count + first, (hour + 1) * count];
  for (let i = at, next = at + count; i < end; i += step, next += step) {
    const error = wind[i]!;
    const turn = turned + dirSd * direction[i]!;
    const offBow = Math.abs(turn - 360 * Math.floor(turn / 360 + 0.5));
    const ahead = unknown | Number(offBow < HEADWIND_DEG);
    const headwind = ahead & Number(error > headwindError);
    const windward = Number(offBow < TO_WINDWARD_DEG) & Number(error >= windwardError);
    let breach = either(ahead & Number(error > farHeadwindError), farAhead, firstBreach[next]!);
    breach = either(Number(seas[i]! > seasError), high, breach);
    breach = either(Number(error > gustError), gust, breach);
    firstBreach[i] = either(Number(error > farOverError), far, breach);
    hoursOver[i] = hoursOver[next]! + (headwind | Number(error > overError));
    motored[i] = motored[next]! + (windward | Number(error < calmError));
  }
  if (bars.barred !== 0) for (let i = at; i < end; i += step) firstBreach[i] = bars.barred;
  if (!bars.windSaid)
    for (let i = at; i < end; i += step) motored[i] = motored[i]! + share[i - hour * count]!;
}

/** Wind and seas from a sector the skipper has set limits for; from an unknown direction they count. */
function judgeSector(
  { weather, paths, first, step }: Sharing,
  sector: Piece['sectors'][number],
  hour: number,
  firstBreach: Uint16Array,
): void {
  const { count, wind, seas, direction } = paths;
  const windError = ((sector.wind ?? Infinity) - weather.wind[hour]!) / weather.windSd[hour]!;
  const seasError = ((sector.seas ?? Infinity) - weather.seas[hour]!) / weather.seasSd[hour]!;
  const [from, dirSd] = [weather.dir[hour]! - sector.from, weather.dirSd[hour]!];
  const unknown = Number(Number.isNaN(from));
  const wide = turnOf(sector.to - sector.from);
  const breach = (hour << CODE_BITS) | code('sector');
  for (let i = hour * count + first; i < (hour + 1) * count; i += step) {
    const over = Number(wind[i]! > windError) | Number(seas[i]! > seasError);
    const within = unknown | Number(turnOf(from + dirSd * direction[i]!) <= wide);
    const before = firstBreach[i]!;
    const free = Number(before >>> CODE_BITS !== hour);
    firstBreach[i] = either(over & within & free, breach, before);
  }
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

/** Whether a bearing lies clockwise from `from` to `to`. */
export function isWithin(
  bearing: number,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  return turnOf(bearing - from) <= turnOf(to - from);
}

/** An angle as a turn clockwise, 0 up to 360 degrees. */
function turnOf(degrees: number): number {
  return degrees - 360 * Math.floor(degrees / 360);
}
