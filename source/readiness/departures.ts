import { type Bits, noBits } from './bits.ts';
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

/** A span in all passages: when each begins and ends it, h after leaving, and where the gate before it stays shut. One it has behind it begins as it ends. */
interface Sailing {
  readonly begins: Float64Array;
  readonly ends: Float64Array;
  readonly shut: Uint8Array;
}

/** Without gates it is the same whenever she leaves. */
function sailingFrom(
  { count, speed, sailedNm, spans, waitHours }: DeparturesInput,
  departure: number,
): readonly Sailing[] {
  let begins = new Float64Array(count);
  return spans.map(({ fromNm, nm, gates }) => {
    const ends = begins.slice();
    const shut = new Uint8Array(count);
    for (let i = 0; i < count; i += 1) {
      const left = Math.min(nm, fromNm + nm - sailedNm[i]!);
      if (left <= 0) continue;
      const wait = gates === null ? 0 : waitFor(gates, departure + begins[i]!);
      if (wait > waitHours) shut[i] = 1;
      ends[i] = begins[i]! + left / speed[i]! + (wait > waitHours ? 0 : wait);
    }
    const sailing = { begins, ends, shut };
    begins = ends;
    return sailing;
  });
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
  { begins, ends, shut }: Sailing,
  { departure, over, failed, motored }: Voyage,
): void {
  const coverTo = Math.ceil(departure + mustCover);
  for (let i = 0; i < count; i += 1) {
    const begin = departure + begins[i]!;
    const end = departure + ends[i]!;
    if (end === begin) continue;
    const from = Math.floor(begin);
    const to = Math.min(Math.ceil(end), coverTo);
    let why = shut[i] === 0 ? 0 : SHUT;
    if (from >= hours) motored[i] = motored[i]! + (end - begin) * share[i]!;
    else {
      const at = from * count + i;
      const here = ahead[at]!;
      const atBegin = here - (begin - from) * (here - ahead[at + count]!);
      motored[i] = motored[i]! + atBegin - aheadAt(ahead, end, hours, count, share, i);
      if (why === 0 && to > from) {
        const within = Math.min(to, hours);
        const breach = firstBreach[at]!;
        over[i] = over[i]! + hoursOver[at]! - hoursOver[within * count + i]!;
        if (breach >>> CODE_BITS < within) why = breach & ((1 << CODE_BITS) - 1);
        else if (over[i]! > overHours) why = OVER;
      }
    }
    if (why === 0 && to > endHour && from < coverTo) why = PAST_FORECAST;
    if (why !== 0 && failed[i] === 0) failed[i] = leg * HINDRANCES.length + why;
  }
}

const SHUT = code('gate');
const OVER = code('wind');
const PAST_FORECAST = code('past forecast');

/** What a running sum from the end still counts at a time, whole hours shared evenly; below zero past the forecast, by the share usually motored. */
function aheadAt(
  sums: Float32Array,
  time: number,
  hours: number,
  count: number,
  share: Float64Array,
  i: number,
): number {
  const hour = Math.floor(time);
  if (hour >= hours) return (hours - time) * share[i]!;
  const at = hour * count + i;
  return sums[at]! - (time - hour) * (sums[at]! - sums[at + count]!);
}

function arrive(
  { count, spans, mayArrive }: DeparturesInput,
  arrivals: Float64Array,
  departure: number,
  failed: Uint16Array,
): void {
  const dark = spans.at(-1)!.leg * HINDRANCES.length + code('daylight');
  for (let i = 0; i < count; i += 1)
    if (failed[i] === 0 && !mayArrive(departure + arrivals[i]!)) failed[i] = dark;
}

/** The passages in which nothing failed; what failed is counted into `fails`. */
function counted(failed: Uint16Array, fails: Uint32Array): Bits {
  const bits = noBits(failed.length);
  for (let i = 0; i < failed.length; i += 1) {
    const what = failed[i]!;
    if (what === 0) bits[i >>> 5] = bits[i >>> 5]! | (1 << (i & 31));
    else fails[what] = fails[what]! + 1;
  }
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
