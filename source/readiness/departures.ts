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
  const voyage = {
    time: new Float64Array(count),
    over: new Uint16Array(count),
    failed: new Uint8Array(count),
    leg: new Uint8Array(count),
  };
  const held = Array.from({ length: lastHour + 1 }, (_, hour) => {
    const sum = motored.subarray(hour * count, (hour + 1) * count);
    voyage.time.fill(hour);
    voyage.over.fill(0);
    voyage.failed.fill(0);
    for (const span of spans) sailSpan(input, span, hour, voyage, sum);
    arrive(input, voyage);
    const bits = noBits(count);
    for (let i = 0; i < count; i += 1) {
      const failed = voyage.failed[i]!;
      if (failed === 0) bits[i >>> 5] = bits[i >>> 5]! | (1 << (i & 31));
      else {
        const place = hour * size + voyage.leg[i]! * HINDRANCES.length + failed;
        fails[place] = fails[place]! + 1;
      }
    }
    return bits;
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

/** All passages that left together, on their way: the time now, hours over so far, what failed first (a code) and on which leg. */
interface Voyage {
  readonly time: Float64Array;
  readonly over: Uint16Array;
  readonly failed: Uint8Array;
  readonly leg: Uint8Array;
}

function sailSpan(
  input: DeparturesInput,
  span: Span,
  departure: number,
  voyage: Voyage,
  motored: Float64Array,
): void {
  const { count, hours, speed, sailedNm, share, waitHours, overHours, mustCover } = input;
  const { leg, fromNm, nm, endHour, gates } = span;
  const { firstBreach, hoursOver, motored: ahead } = span.weather;
  const { time, over, failed } = voyage;
  const coverTo = Math.ceil(departure + mustCover);
  for (let i = 0; i < count; i += 1) {
    const left = Math.min(nm, fromNm + nm - sailedNm[i]!);
    if (left <= 0) continue;
    const begin = time[i]!;
    let end = begin + left / speed[i]!;
    let why = 0;
    if (gates !== null) {
      const wait = waitFor(gates, begin);
      if (wait > waitHours) why = code('gate');
      else end += wait;
    }
    time[i] = end;
    const from = Math.floor(begin);
    if (from >= hours) motored[i] = motored[i]! + (end - begin) * share[i]!;
    else {
      const at = from * count + i;
      const here = ahead[at]!;
      const atBegin = here - (begin - from) * (here - ahead[at + count]!);
      motored[i] = motored[i]! + atBegin - aheadAt(ahead, end, hours, count, share, i);
      const to = Math.min(Math.ceil(end), coverTo, hours);
      if (to > from && why === 0) {
        const breach = firstBreach[at]!;
        over[i] = over[i]! + hoursOver[at]! - hoursOver[to * count + i]!;
        if (breach >>> CODE_BITS < to) why = breach & ((1 << CODE_BITS) - 1);
        else if (over[i]! > overHours) why = code('wind');
      }
    }
    if (why === 0 && from < coverTo && Math.min(Math.ceil(end), coverTo) > endHour)
      why = code('past forecast');
    if (why !== 0 && failed[i] === 0) {
      failed[i] = why;
      voyage.leg[i] = leg;
    }
  }
}

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

function arrive({ count, spans, mayArrive }: DeparturesInput, { time, failed, leg }: Voyage): void {
  const last = spans.at(-1)!.leg;
  for (let i = 0; i < count; i += 1)
    if (failed[i] === 0 && !mayArrive(time[i]!)) {
      failed[i] = code('daylight');
      leg[i] = last;
    }
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
