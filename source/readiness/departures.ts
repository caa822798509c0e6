import { type Bits, noBits } from './bits.ts';
import { either } from './either.ts';
import { CODE_BITS, code, HINDRANCES, type Hindrance, type LegWeather } from './leg-weather.ts';

/** A stretch of the passage with one weather: where on the way it begins, how long it is, whose weather it has. */
export interface Span {
  readonly leg: number;
  readonly fromNm: number;
  readonly nm: number;
  readonly weather: LegWeather;
  /** The hour from which the forecast says nothing more there. */
  readonly endHour: number;
  /** Open hours of a tidal gate at its start, hours from now; null where there is none. */
  readonly gates: readonly { readonly from: number; readonly to: number }[] | null;
}

export interface DeparturesInput {
  readonly count: number;
  readonly lastHour: number;
  /** Hours of weather judged. */
  readonly hours: number;
  /** Speed and, where she is under way already, what she has sailed, nm. One a passage. */
  readonly speed: Float64Array;
  readonly sailedNm: Float64Array;
  /** Share of the time motored past the hours of the forecast. */
  readonly share: Float64Array;
  readonly spans: readonly Span[];
  readonly waitHours: number;
  readonly overHours: number;
  /** How much of the passage the forecast must cover, h. */
  readonly mustCover: number;
  /** Whether she may arrive at that hour from now. */
  mayArrive(hour: number): boolean;
}

export interface Departures {
  /** The passages the weather lets through, for every departure. */
  readonly held: readonly Bits[];
  /** Engine hours under way: `[departure * count + i]`. */
  readonly motored: Float64Array;
  /** For a departure: what fails most, where, and in how many passages; null where nothing does. */
  worst(hour: number): Failing | null;
  /** The same for each leg on which anything fails. */
  worstOfLegs(hour: number): readonly Failing[];
}

interface Failing {
  readonly hindrance: Hindrance;
  readonly leg: number;
  /** In so many of them it fails first. */
  readonly passages: number;
}

/** Sails every simulated passage from every whole hour through its weather (model 8): a departure costs the spans it has, not the hours. */
export function departures(input: DeparturesInput): Departures {
  const { count, lastHour, spans } = input;
  const legs = Math.max(...spans.map(({ leg }) => leg)) + 1;
  const size = legs * HINDRANCES.length;
  const fails = new Uint32Array((lastHour + 1) * size);
  const motored = new Float64Array((lastHour + 1) * count);
  const over = new Uint16Array(count);
  const failed = new Uint16Array(count);
  const gated = spans.some(({ gates }) => gates !== null);
  let sailing = sailingFrom(input, 0);
  const held = Array.from({ length: lastHour + 1 }, (_, hour) => {
    if (gated) sailing = sailingFrom(input, hour);
    const sum = motored.subarray(hour * count, (hour + 1) * count);
    over.fill(0);
    failed.fill(0);
    for (const [place, span] of spans.entries())
      sailSpan(input, span, sailing[place]!, { departure: hour, over, failed, motored: sum });
    arrive(input, sailing.at(-1)!.ends, hour, failed);
    return counted(failed, fails.subarray(hour * size, (hour + 1) * size));
  });
  const failsAt = (hour: number) => fails.subarray(hour * size, (hour + 1) * size);
  return {
    held,
    motored,
    worst: (hour) => worstOf(failsAt(hour)),
    worstOfLegs: (hour) =>
      Array.from({ length: legs }, (_, leg) => {
        const from = leg * HINDRANCES.length;
        const worst = worstOf(failsAt(hour).subarray(from, from + HINDRANCES.length));
        return worst === null ? [] : [{ ...worst, leg }];
      }).flat(),
  };
}

/** A span in all passages: when each begins and ends it, h after leaving. */
interface Sailing {
  readonly begins: Times;
  readonly ends: Times;
  /** The whole hour it is done by; for a span that is not sailed, the one it begins in. */
  readonly upTo: Int32Array;
  /** 1 where the gate before it stays shut. */
  readonly shut: Uint8Array;
}

interface Times {
  readonly at: Float64Array;
  /** The same as whole hours and the part of one over them. */
  readonly hour: Int32Array;
  readonly part: Float64Array;
}

/** Without gates it is the same whenever she leaves. */
function sailingFrom(
  { count, speed, sailedNm, spans, waitHours }: DeparturesInput,
  departure: number,
): readonly Sailing[] {
  let begins = timesOf(new Float64Array(count));
  return spans.map(({ fromNm, nm, gates }) => {
    const at = begins.at.slice();
    const shut = new Uint8Array(count);
    for (let i = 0; i < count; i += 1) {
      const left = Math.min(nm, fromNm + nm - sailedNm[i]!);
      if (left <= 0) continue;
      const wait = gates === null ? 0 : waitFor(gates, departure + at[i]!);
      if (wait > waitHours) shut[i] = 1;
      at[i] = at[i]! + left / speed[i]! + (wait > waitHours ? 0 : wait);
    }
    const ends = timesOf(at);
    const upTo = begins.hour.map((hour, i) => (at[i]! > begins.at[i]! ? Math.ceil(at[i]!) : hour));
    const sailing = { begins, ends, upTo, shut };
    begins = ends;
    return sailing;
  });
}

function timesOf(at: Float64Array): Times {
  const hour = Int32Array.from(at, Math.floor);
  return { at, hour, part: at.map((time, i) => time - hour[i]!) };
}

/** All passages that left together, on their way: hours over so far, what failed first and where (0: nothing yet), engine hours. */
interface Voyage {
  readonly departure: number;
  readonly over: Uint16Array;
  readonly failed: Uint16Array;
  readonly motored: Float64Array;
}

function sailSpan(
  { count, hours, share, overHours, mustCover }: DeparturesInput,
  { leg, endHour, weather: { firstBreach, hoursOver, motored: ahead } }: Span,
  { begins, ends, upTo, shut }: Sailing,
  { departure, over, failed, motored }: Voyage,
): void {
  const coverTo = departure + Math.ceil(mustCover);
  const place = leg * HINDRANCES.length;
  for (let i = 0; i < count; i += 1) {
    const from = departure + begins.hour[i]!;
    const until = departure + ends.hour[i]!;
    motored[i] =
      motored[i]! +
      aheadAt(ahead, from, begins.part[i]!, hours, count, share, i) -
      aheadAt(ahead, until, ends.part[i]!, hours, count, share, i);
    const to = Math.min(departure + upTo[i]!, coverTo);
    const [first, last] = [Math.min(from, hours), Math.min(to, hours)];
    const judged = Number(last > first);
    const breach = firstBreach[first * count + i]!;
    over[i] = over[i]! + judged * (hoursOver[first * count + i]! - hoursOver[last * count + i]!);
    let why = either(Number(to > from) & Number(to > endHour), PAST_FORECAST, 0);
    why = either(judged & Number(over[i]! > overHours), OVER, why);
    why = either(judged & Number(breach >>> CODE_BITS < last), breach & ((1 << CODE_BITS) - 1), why);
    why = either(shut[i]!, SHUT, why);
    failed[i] = either(Number(failed[i] === 0) & Number(why !== 0), place + why, failed[i]!);
  }
}

const SHUT = code('gate');
const OVER = code('wind');
const PAST_FORECAST = code('past forecast');

/** What a running sum from the end still counts at a time, whole hours shared evenly; below zero past the forecast, by the share usually motored. */
function aheadAt(
  sums: Float32Array,
  hour: number,
  part: number,
  hours: number,
  count: number,
  share: Float64Array,
  i: number,
): number {
  if (hour >= hours) return (hours - hour - part) * share[i]!;
  const at = hour * count + i;
  return sums[at]! - part * (sums[at]! - sums[at + count]!);
}

function arrive(
  { count, spans, mayArrive }: DeparturesInput,
  { at }: Times,
  departure: number,
  failed: Uint16Array,
): void {
  const dark = spans.at(-1)!.leg * HINDRANCES.length + code('daylight');
  for (let i = 0; i < count; i += 1) if (failed[i] === 0 && !mayArrive(departure + at[i]!)) failed[i] = dark;
}

/** The passages in which nothing failed; what failed is counted into `fails`. */
function counted(failed: Uint16Array, fails: Uint32Array): Bits {
  const bits = noBits(failed.length);
  for (let i = 0; i < failed.length; i += 1) {
    const what = failed[i]!;
    bits[i >>> 5] = bits[i >>> 5]! | (Number(what === 0) << (i & 31));
    fails[what] = fails[what]! + 1;
  }
  fails[0] = 0;
  return bits;
}

/** How long until the gate is open; Infinity where it does not open again. */
function waitFor(gates: readonly { readonly from: number; readonly to: number }[], time: number): number {
  let least = Infinity;
  for (const { from, to } of gates) if (to >= time) least = Math.min(least, Math.max(0, from - time));
  return least;
}

function worstOf(fails: Uint32Array): Failing | null {
  const passages = fails.reduce((most, one) => Math.max(most, one), 0);
  if (passages === 0) return null;
  const place = fails.indexOf(passages);
  const hindrance = HINDRANCES[place % HINDRANCES.length]!;
  return { hindrance, leg: Math.floor(place / HINDRANCES.length), passages };
}
