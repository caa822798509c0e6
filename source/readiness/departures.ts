import { inOneGo, type Turns } from '../maths/turns.ts';
import { type Bits, noBits } from './bits.ts';
import {
  type Block,
  CODE_BITS,
  code,
  HINDRANCES,
  type Hindrance,
  type LegInput,
  type LegWeather,
  legBars,
  legWeather,
  roomForLeg,
} from './leg-weather.ts';

/** A stretch of the passage with one weather: where on the way it begins, how long it is, whose weather it has. */
export interface Span {
  readonly leg: number;
  readonly fromNm: number;
  readonly nm: number;
  readonly weather: LegInput;
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

/** Passages sailed at a time: the weather of three spans and ten days for them fits in the second cache of most processors. A multiple of `GROUP`. */
const BLOCK = 64;
/** As many passages stand in one word of a set. */
const GROUP = 32;

/** Sails every simulated passage from every whole hour through its weather (model 8): a departure costs the spans it has, not the hours. */
export function departures(input: DeparturesInput): Departures {
  return inOneGo(departing(input));
}

/** The same in turns. */
export function* departing(input: DeparturesInput): Turns<Departures> {
  const { count, lastHour, hours, spans } = input;
  const legs = Math.max(...spans.map(({ leg }) => leg)) + 1;
  const size = legs * HINDRANCES.length;
  const into: Into = {
    held: Array.from({ length: lastHour + 1 }, () => noBits(count)),
    motored: new Float64Array((lastHour + 1) * count),
    fails: new Uint32Array((lastHour + 1) * size),
    size,
  };
  const bars = spans.map(({ weather }) => legBars(weather));
  const weathers = spans.map(() => roomForLeg(hours, BLOCK));
  const voyage = voyageFor(lastHour);
  for (let from = 0; from < count; from += BLOCK) {
    yield;
    const block = { from, size: Math.min(BLOCK, count - from) };
    for (const [place, one] of bars.entries()) legWeather(one, block, weathers[place]!);
    for (let i = 0; i < block.size; i += 1) {
      sail(input, weathers, { block, i }, voyage);
      if ((from + i) % GROUP === GROUP - 1) putGroup(voyage, from + i + 1 - GROUP, count, into);
    }
  }
  const failsAt = (hour: number) => into.fails.subarray(hour * size + 1, (hour + 1) * size);
  return {
    held: into.held,
    motored: into.motored,
    worst: (hour) => worstOf(failsAt(hour)),
    worstOfLegs: (hour) =>
      Array.from({ length: legs }, (_, leg) => {
        const from = leg * HINDRANCES.length;
        const worst = worstOf(failsAt(hour).subarray(from, from + HINDRANCES.length - 1));
        return worst === null ? [] : [{ ...worst, leg }];
      }).flat(),
  };
}

interface Into {
  readonly held: readonly Bits[];
  readonly motored: Float64Array;
  /** `[departure * size + leg * number of hindrances + hindrance]` */
  readonly fails: Uint32Array;
  readonly size: number;
}

/** One passage on its way from every departure: hours over so far, what failed first and where (0: nothing yet). Engine hours of a whole group, `[departure * GROUP + i]`; what failed of each of them likewise. */
interface Voyage {
  readonly over: Uint16Array;
  readonly failed: Uint16Array;
  readonly motored: Float64Array;
}

function voyageFor(lastHour: number): Voyage {
  const departed = lastHour + 1;
  return {
    over: new Uint16Array(departed),
    failed: new Uint16Array(departed * GROUP),
    motored: new Float64Array(departed * GROUP),
  };
}

/** Sails one passage from every hour. Without gates it takes the same whenever she leaves. */
function sail(
  input: DeparturesInput,
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
  { speed, sailedNm, waitHours }: DeparturesInput,
  { fromNm, nm, gates }: Span,
  passage: number,
  departure: number,
  begins: number,
): Sailing {
  const left = Math.min(nm, fromNm + nm - sailedNm[passage]!);
  if (left <= 0) return { begins, ends: begins, shut: false };
  const wait = gates === null ? 0 : waitFor(gates, departure + begins);
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
  { hours, share, overHours, mustCover }: DeparturesInput,
  { leg, endHour }: Span,
  { firstBreach, hoursOver, motored: sums }: LegWeather,
  { passage, i, first, last, begins, ends, shut }: Sailed,
  { over, failed, motored }: Voyage,
): void {
  const [start, stop] = [Math.floor(begins), Math.floor(ends)];
  const [startPart, stopPart] = [begins - start, ends - stop];
  // The whole hour it is done by; for a span that is not sailed, the one it begins in.
  const reach = Math.min(ends > begins ? Math.ceil(ends) : start, Math.ceil(mustCover));
  const usual = share[passage]!;
  const row = i * (hours + 1);
  const place = leg * HINDRANCES.length;
  const sailed = reach > start;
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
    if (sailed && from < hours) {
      const to = Math.min(departure + reach, hours);
      over[departure] = over[departure]! + hoursOver[row + from]! - hoursOver[row + to]!;
      if (failed[at] !== 0) continue;
      const breach = firstBreach[row + from]!;
      let why = departure + reach > endHour ? PAST_FORECAST : 0;
      if (over[departure]! > overHours) why = OVER;
      if (breach >>> CODE_BITS < to) why = breach & ((1 << CODE_BITS) - 1);
      if (shut) why = SHUT;
      if (why !== 0) failed[at] = place + why;
    } else if (failed[at] === 0) {
      const why = shut ? SHUT : sailed && departure + reach > endHour ? PAST_FORECAST : 0;
      if (why !== 0) failed[at] = place + why;
    }
  }
}

const SHUT = code('gate');
const OVER = code('wind');
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

/** Puts a group of passages where all are kept, by departure: its engine hours, in how many what failed first, and those in which nothing did. */
function putGroup({ failed, motored }: Voyage, from: number, count: number, into: Into): void {
  const { held, fails, size } = into;
  for (let departure = 0; departure < held.length; departure += 1) {
    const first = departure * GROUP;
    let bits = 0;
    for (let i = 0; i < GROUP; i += 1) {
      const what = failed[first + i]!;
      bits |= Number(what === 0) << i;
      fails[departure * size + what] = fails[departure * size + what]! + 1;
      into.motored[departure * count + from + i] = motored[first + i]!;
    }
    held[departure]![from / GROUP] = bits;
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
  const place = fails.indexOf(passages) + 1;
  const hindrance = HINDRANCES[place % HINDRANCES.length]!;
  return { hindrance, leg: Math.floor(place / HINDRANCES.length), passages };
}
