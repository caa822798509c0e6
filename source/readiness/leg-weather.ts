import type { Limits } from '../boat/limits.ts';
import type { Piece } from '../passage/pieces.ts';
import { either } from './either.ts';
import { CODE_BITS, code } from './hindrances.ts';
import { type HourBars, hourBars, unsaidHours } from './hour-bars.ts';
import { turnOf, widthOf } from './turn.ts';
import type { WeatherPaths } from './weather-paths.ts';
import type { HourlyWeather } from './weather-table.ts';

/** Wind within so many degrees of the bow is a headwind (words: headwind). */
const HEADWIND_DEG = 60;
/** Motored to windward: forward of the beam within so many degrees of the bow (model 2). */
const TO_WINDWARD_DEG = 45;

/** Some passages one after the other: so few that all the hours of their weather stay near the processor. */
export interface Block {
  readonly from: number;
  readonly size: number;
}

/** Every hour of one leg's weather, judged for a block of the simulated passages. Arrays are `[i * (hours + 1) + hour]`, i counted from the start of the block: a departure an hour later reads the next place. */
export interface LegWeather {
  /** The first hour from this one on that fails at once, and why: `hour << CODE_BITS | code`. Past the last hour: none does. */
  readonly firstBreach: Uint16Array;
  /** Hours from this one on with wind or headwind over its limit, and above `OVER_BITS` those with the wind over its own: the two counts of a stretch are their difference. */
  readonly hoursOver: Uint16Array;
  /** Engine hours from this one on. */
  readonly motored: Float32Array;
  /** The first hour from this one on of which something judged is not said: of each member of an ensemble, or of the one forecast. The same for every block. */
  readonly unsaid: readonly Uint16Array[];
}

/** As many hours as are looked at, 480, fit below; above, counts go round at 128: no stretch is so long over the limit of the wind. */
export const OVER_BITS = 9;

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

/** Room for one leg's weather of a block of at most `size` passages. */
export function roomForLeg({ input, met }: LegBars, size: number): LegWeather {
  const all = (input.paths.hours + 1) * size;
  return {
    firstBreach: new Uint16Array(all),
    hoursOver: new Uint16Array(all),
    motored: new Float32Array(all),
    unsaid: met.map(({ weather }) => unsaidHours(weather, input.limits, input.piece.sectors)),
  };
}

/** A leg made ready to be judged block by block. */
export interface LegBars {
  readonly input: LegInput;
  /** What each member of an ensemble, or the one forecast, says, and its hours as bars. */
  readonly met: readonly { readonly weather: HourlyWeather; readonly hours: readonly HourBars[] }[];
}

export function legBars(input: LegInput): LegBars {
  const { members } = input.weather;
  const met = (members.length > 0 ? members : [input.weather]).map((weather) => ({
    weather,
    hours: Array.from({ length: input.paths.hours }, (_, hour) =>
      hourBars({ ...input, weather, courseDeg: input.piece.courseDeg }, hour),
    ),
  }));
  return { input, met };
}

/** Hours are judged backwards, each on top of the one after it, so that a departure reads off what lies ahead of it. Written over what was in `into`. Passage i meets member i mod M of an ensemble of M. */
export function legWeather({ input, met }: LegBars, block: Block, into: LegWeather): void {
  const { hours, count } = input.paths;
  const { from, size } = block;
  const row = hours + 1;
  for (let end = hours; end < size * row; end += row) {
    into.firstBreach[end] = hours << CODE_BITS;
    into.hoursOver[end] = 0;
    into.motored[end] = 0;
  }
  for (let hour = hours - 1; hour >= 0; hour -= 1)
    for (let first = 0; first < Math.min(met.length, size); first += 1) {
      const { weather, hours: bars } = met[(from + first) % met.length]!;
      const those = {
        ...{ hour, at: first * row + hour, end: size * row, row: met.length * row },
        ...{ path: hour * count + from + first, step: met.length },
      };
      judgeHour(input, bars[hour]!, those, into);
      const others = weather.otherDirs.get(hour) ?? [];
      if (others.length > 0) judgeOtherDirs(input, bars[hour]!, others, those, into);
      for (const sector of input.piece.sectors)
        for (const dir of [weather.dir[hour]!, ...others])
          judgeSector(input, sector, weather, dir, those, into.firstBreach);
    }
}

/** The passages of a block that meet one weather, at one hour: their places in a leg's arrays and in the paths. */
interface Those {
  readonly hour: number;
  readonly at: number;
  readonly end: number;
  readonly row: number;
  readonly path: number;
  readonly step: number;
}

const [WIND, GUST, HEADWIND, SECTOR] = [code('wind'), code('gust'), code('headwind'), code('sector')];

/** Everything but the sectors. Where the direction is not said, the wind is taken to come from ahead. */
function judgeHour(
  { motorToWindward, paths: { wind, seas, direction }, share }: LegInput,
  bars: HourBars,
  { hour, at, end, row, path, step }: Those,
  { firstBreach, hoursOver, motored }: LegWeather,
): void {
  const { overError, farOverError, gustError, seasError, calmError, turned, dirSd } = bars;
  const { headwindError, farHeadwindError } = bars;
  const unknown = Number(Number.isNaN(turned));
  const windwardError = motorToWindward ? calmError : Infinity;
  const mark = hour << CODE_BITS;
  const [far, gust, high, farAhead] = [mark | WIND, mark | GUST, mark | bars.seasCode, mark | HEADWIND];
  for (let i = at, p = path; i < end; i += row, p += step) {
    const error = wind[p]!;
    const turn = turned + dirSd * direction[p]!;
    const offBow = Math.abs(turn - 360 * Math.floor(turn / 360 + 0.5));
    const ahead = unknown | Number(offBow < HEADWIND_DEG);
    const headwind = ahead & Number(error > headwindError);
    const windward = Number(offBow < TO_WINDWARD_DEG) & Number(error >= windwardError);
    let breach = either(ahead & Number(error > farHeadwindError), farAhead, firstBreach[i + 1]!);
    breach = either(Number(seas[p]! > seasError), high, breach);
    breach = either(Number(error > gustError), gust, breach);
    firstBreach[i] = either(Number(error > farOverError), far, breach);
    const over = Number(error > overError);
    hoursOver[i] = hoursOver[i + 1]! + (headwind | over) + (over << OVER_BITS);
    motored[i] = motored[i + 1]! + (windward | Number(error < calmError));
  }
  if (bars.barred !== 0) for (let i = at; i < end; i += row) firstBreach[i] = bars.barred;
  if (!bars.windSaid)
    for (let i = at, p = path % share.length; i < end; i += row, p += step)
      motored[i] = motored[i]! + share[p]!;
}

/** Where the wind comes from several directions in the hour, each counts: it is a headwind where any of them is ahead. */
function judgeOtherDirs(
  { piece: { courseDeg }, paths: { wind, direction } }: LegInput,
  { overError, headwindError, farHeadwindError, turned, dirSd }: HourBars,
  others: readonly number[],
  { hour, at, end, row, path, step }: Those,
  { firstBreach, hoursOver }: LegWeather,
): void {
  const isAhead = (off: number) =>
    Number.isNaN(off) || Math.abs(off - 360 * Math.round(off / 360)) < HEADWIND_DEG;
  const breach = (hour << CODE_BITS) | HEADWIND;
  for (let i = at, p = path; i < end; i += row, p += step) {
    const error = wind[p]!;
    const stray = dirSd * direction[p]!;
    if (!(error > headwindError) || isAhead(turned + stray)) continue;
    if (!others.some((dir) => isAhead(dir - courseDeg + stray))) continue;
    if (!(error > overError)) hoursOver[i] = hoursOver[i]! + 1;
    if (error > farHeadwindError && firstBreach[i]! >>> CODE_BITS !== hour) firstBreach[i] = breach;
  }
}

/** Wind and seas from a sector the skipper has set limits for; from an unknown direction they count. */
function judgeSector(
  { paths: { wind, seas, direction } }: LegInput,
  sector: Piece['sectors'][number],
  weather: HourlyWeather,
  dir: number,
  { hour, at, end, row, path, step }: Those,
  firstBreach: Uint16Array,
): void {
  const windError = ((sector.wind ?? Infinity) - weather.wind[hour]!) / weather.windSd[hour]!;
  const seasError = ((sector.seas ?? Infinity) - weather.seas[hour]!) / weather.seasSd[hour]!;
  const [from, dirSd] = [dir - sector.from, weather.dirSd[hour]!];
  const unknown = Number.isNaN(from);
  const wide = widthOf(sector);
  const breach = (hour << CODE_BITS) | SECTOR;
  for (let i = at, p = path; i < end; i += row, p += step) {
    if (!(wind[p]! > windError || seas[p]! > seasError)) continue;
    const within = unknown || turnOf(from + dirSd * direction[p]!) <= wide;
    if (within && firstBreach[i]! >>> CODE_BITS !== hour) firstBreach[i] = breach;
  }
}
