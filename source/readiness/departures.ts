import { inOneGo, type Turns } from '../maths/turns.ts';
import { type Bits, noBits } from './bits.ts';
import { HINDRANCES, type Hindrance } from './hindrances.ts';
import { legBars, legWeather, roomForLeg } from './leg-weather.ts';
import { GROUP, sail, type Voyage, type VoyageInput, voyageFor } from './voyage.ts';

export interface DeparturesInput extends VoyageInput {
  readonly count: number;
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

/** Sails every simulated passage from every whole hour through its weather (model 8): a departure costs the spans it has, not the hours. */
export function departures(input: DeparturesInput): Departures {
  return inOneGo(departing(input));
}

/** The same in turns. */
export function* departing(input: DeparturesInput): Turns<Departures> {
  const { count, lastHour, spans } = input;
  const legs = Math.max(...spans.map(({ leg }) => leg)) + 1;
  const size = legs * HINDRANCES.length;
  const into: Into = {
    held: Array.from({ length: lastHour + 1 }, () => noBits(count)),
    motored: new Float64Array((lastHour + 1) * count),
    fails: new Uint32Array((lastHour + 1) * size),
    size,
  };
  const bars = spans.map(({ weather }) => legBars(weather));
  const weathers = bars.map((one) => roomForLeg(one, BLOCK));
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

function worstOf(fails: Uint32Array): Failing | null {
  const passages = fails.reduce((most, one) => Math.max(most, one), 0);
  if (passages === 0) return null;
  const place = fails.indexOf(passages) + 1;
  const hindrance = HINDRANCES[place % HINDRANCES.length]!;
  return { hindrance, leg: Math.floor(place / HINDRANCES.length), passages };
}
