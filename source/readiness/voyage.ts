import { CODE_BITS, code, HINDRANCES } from './hindrances.ts';
import { type Block, type LegWeather, OVER_BITS } from './leg-weather.ts';
import type { Span } from './spans.ts';

/** What all the passages share, and what each drew: arrays hold one value a passage. */
export interface VoyageInput {
  readonly lastHour: number;
  /** Hours of weather judged. */
  readonly hours: number;
  /** Speed and, where she is under way already, what she has sailed, nm. */
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

/** As many passages stand in one word of a set. */
export const GROUP = 32;

/** One passage on its way from every departure: hours over so far, counted as a leg's weather counts them, what failed first and where (0: nothing yet). Engine hours of a whole group, `[departure * GROUP + i]`; what failed of each of them likewise. */
export interface Voyage {
  readonly over: Uint16Array;
  readonly failed: Uint16Array;
  readonly motored: Float64Array;
}

/** Room for a passage and its group; sailed anew, it is written over. */
export function voyageFor(lastHour: number): Voyage {
  const departed = lastHour + 1;
  return {
    over: new Uint16Array(departed),
    failed: new Uint16Array(departed * GROUP),
    motored: new Float64Array(departed * GROUP),
  };
}

/** Sails one passage from every hour. Without gates it takes the same whenever she leaves. */
export function sail(
  input: VoyageInput,
  weathers: readonly LegWeather[],
  { block, i }: { readonly block: Block; readonly i: number },
  voyage: Voyage,
): void {
  const { lastHour, spans, mayArrive } = input;
  const passage = block.from + i;
  const gated = spans.some(({ gates }) => gates !== null);
  const { over, failed, motored } = voyage;
  const place = passage % GROUP;
  over.fill(0);
  for (let at = place; at < failed.length; at += GROUP) {
    failed[at] = 0;
    motored[at] = 0;
  }
  const dark = spans.at(-1)!.leg * HINDRANCES.length + DARK;
  for (let first = 0; first <= lastHour; first = gated ? first + 1 : lastHour + 1) {
    const last = gated ? first : lastHour;
    let begins = 0;
    for (const [which, span] of spans.entries()) {
      const sailing = sailingOf(input, span, passage, first, begins);
      sailSpan(input, span, weathers[which]!, { passage, i, first, last, ...sailing }, voyage);
      begins = sailing.ends;
    }
    for (let departure = first, at = first * GROUP + place; departure <= last; departure += 1, at += GROUP)
      if (failed[at] === 0 && !mayArrive(departure + begins)) failed[at] = dark;
  }
}

/** When a passage begins and ends a span, h after leaving, and whether the gate before it stays shut. */
interface Sailing {
  readonly begins: number;
  readonly ends: number;
  readonly shut: boolean;
}

function sailingOf(
  { speed, sailedNm, waitHours }: VoyageInput,
  { fromNm, nm, gates }: Span,
  passage: number,
  departure: number,
  begins: number,
): Sailing {
  const left = Math.min(nm, fromNm + nm - sailedNm[passage]!);
  if (left <= 0) return { begins, ends: begins, shut: false };
  const passed = sailedNm[passage]! > fromNm;
  const wait = gates === null || passed ? 0 : waitFor(gates, departure + begins);
  const shut = wait > waitHours;
  return { begins, ends: begins + left / speed[passage]! + (shut ? 0 : wait), shut };
}

/** The passage it is, and the departures it is sailed for. */
interface Sailed extends Sailing {
  readonly passage: number;
  /** Counted from the start of its block. */
  readonly i: number;
  readonly first: number;
  readonly last: number;
}

function sailSpan(
  { hours, share, overHours, mustCover }: VoyageInput,
  { leg, endHour }: Span,
  { firstBreach, hoursOver, motored: sums, unsaid: unsaidOf }: LegWeather,
  { passage, i, first, last, begins, ends, shut }: Sailed,
  { over, failed, motored }: Voyage,
): void {
  const [start, stop] = [Math.floor(begins), Math.floor(ends)];
  const [startPart, stopPart] = [begins - start, ends - stop];
  // The whole hour it is done by; for a span that is not sailed, the one it begins in.
  const reach = ends > begins ? Math.ceil(ends) : start;
  // What is known beyond the hours that must be covered counts; what is not known there does not bar.
  const cover = Math.min(reach, Math.ceil(mustCover));
  const unsaid = unsaidOf[passage % unsaidOf.length]!;
  const usual = share[passage]!;
  const row = i * (hours + 1);
  const place = leg * HINDRANCES.length;
  // The last departures whose weather on the way is known, and that are done by the end of what must be.
  const known = reach > start ? Math.min(last, hours - 1 - start) : first - 1;
  const within = cover > start ? endHour - cover : last;
  for (
    let departure = first, at = first * GROUP + (passage % GROUP);
    departure <= last;
    departure += 1, at += GROUP
  ) {
    const [from, until] = [departure + start, departure + stop];
    motored[at] =
      motored[at]! +
      ahead(sums, row, from, startPart, hours, usual) -
      ahead(sums, row, until, stopPart, hours, usual);
    if (failed[at] !== 0) continue;
    let why = departure > within ? PAST_FORECAST : 0;
    if (departure <= known) {
      const to = Math.min(departure + reach, hours);
      const counted = over[departure]! + hoursOver[row + from]! - hoursOver[row + to]!;
      over[departure] = counted;
      if ((counted & OVER_MASK) > overHours) why = counted >>> OVER_BITS > overHours ? WIND : HEADWIND;
      const gap = unsaid[from]!;
      if (gap < to && gap < departure + cover) why = NOT_SAID;
      const breach = firstBreach[row + from]!;
      const breached = breach >>> CODE_BITS;
      if (breached < to && (why !== NOT_SAID || breached <= gap)) why = breach & CODE_MASK;
    }
    if (shut) why = SHUT;
    if (why !== 0) failed[at] = place + why;
  }
}

const SHUT = code('gate');
const OVER_MASK = (1 << OVER_BITS) - 1;
const CODE_MASK = (1 << CODE_BITS) - 1;
const [WIND, HEADWIND, NOT_SAID] = [code('wind'), code('headwind'), code('not said')];
const DARK = code('daylight');
const PAST_FORECAST = code('past forecast');

/** What a running sum from the end still counts at a time, whole hours shared evenly; below zero past the forecast, by the share usually motored. */
function ahead(
  sums: Float32Array,
  row: number,
  hour: number,
  part: number,
  hours: number,
  usual: number,
): number {
  if (hour >= hours) return (hours - hour - part) * usual;
  const sum = sums[row + hour]!;
  return sum - part * (sum - sums[row + hour + 1]!);
}

/** How long until the gate is open; Infinity where it does not open again. */
function waitFor(gates: readonly { readonly from: number; readonly to: number }[], time: number): number {
  let least = Infinity;
  for (const { from, to } of gates) if (to >= time) least = Math.min(least, Math.max(0, from - time));
  return least;
}
