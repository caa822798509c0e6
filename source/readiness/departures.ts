import { type Bits, noBits } from './bits.ts';
import { CODE_BITS, HINDRANCES, type Hindrance, type LegWeather } from './leg-weather.ts';

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
  worst(
    hour: number,
  ): { readonly hindrance: Hindrance; readonly leg: number; readonly passages: number } | null;
}

/** Sails every simulated passage from every whole hour through its weather (model 8): a departure costs the spans it has, not the hours. */
export function departures(input: DeparturesInput): Departures {
  const { count, lastHour, spans } = input;
  const legs = Math.max(...spans.map(({ leg }) => leg)) + 1;
  const fails = new Uint32Array((lastHour + 1) * legs * HINDRANCES.length);
  const motored = new Float64Array((lastHour + 1) * count);
  const sail = sailor(input);
  const held = Array.from({ length: lastHour + 1 }, (_, hour) => {
    const bits = noBits(count);
    for (let i = 0; i < count; i += 1) {
      sail.leave(hour, i);
      motored[hour * count + i] = sail.motored;
      if (sail.failed === 0) bits[i >>> 5] = bits[i >>> 5]! | (1 << (i & 31));
      else {
        const place = (hour * legs + sail.leg) * HINDRANCES.length + sail.failed;
        fails[place] = fails[place]! + 1;
      }
    }
    return bits;
  });
  return {
    held,
    motored,
    worst(hour) {
      const size = legs * HINDRANCES.length;
      const here = fails.subarray(hour * size, (hour + 1) * size);
      const passages = here.reduce((most, one) => Math.max(most, one), 0);
      if (passages === 0) return null;
      const place = here.indexOf(passages);
      return {
        hindrance: HINDRANCES[place % HINDRANCES.length]!,
        leg: Math.floor(place / HINDRANCES.length),
        passages,
      };
    },
  };
}

interface Sailor {
  /** What failed first: a code; 0 for nothing. */
  failed: number;
  leg: number;
  motored: number;
  leave(departure: number, i: number): void;
}

function sailor(input: DeparturesInput): Sailor {
  const { count, hours, speed, sailedNm, share, spans, waitHours, overHours, mustCover, mayArrive } = input;
  const [wind, pastForecast, daylight, gate] = (['wind', 'past forecast', 'daylight', 'gate'] as const).map(
    (hindrance) => HINDRANCES.indexOf(hindrance),
  ) as [number, number, number, number];
  const sail: Sailor = {
    failed: 0,
    leg: 0,
    motored: 0,
    leave(departure, i) {
      sail.failed = 0;
      sail.motored = 0;
      let time: number = departure;
      let over = 0;
      for (const { leg, fromNm, nm, weather, endHour, gates } of spans) {
        const left = Math.min(nm, fromNm + nm - sailedNm[i]!);
        if (left <= 0) continue;
        const begin = time;
        if (gates !== null) {
          const wait = waitFor(gates, time);
          if (wait > waitHours) fail(gate, leg);
          else time += wait;
        }
        time += left / speed[i]!;
        sail.motored += between(weather.motored, begin, time, i);
        const covered = Math.min(Math.ceil(time), Math.ceil(departure + mustCover), hours);
        const from = Math.min(Math.floor(begin), hours);
        if (covered <= from) continue;
        if (covered > endHour) fail(pastForecast, leg);
        const breach = weather.firstBreach[from * count + i]!;
        if (breach >>> CODE_BITS < covered) fail(breach & ((1 << CODE_BITS) - 1), leg);
        over += weather.hoursOver[from * count + i]! - weather.hoursOver[covered * count + i]!;
        if (over > overHours) fail(wind, leg);
      }
      if (!mayArrive(time)) fail(daylight, spans.at(-1)!.leg);
    },
  };

  function fail(why: number, leg: number): void {
    if (sail.failed !== 0) return;
    sail.failed = why;
    sail.leg = leg;
  }

  /** What a running sum from the end counts between two times, whole hours shared evenly. */
  function between(sums: Float32Array, begin: number, end: number, i: number): number {
    return at(sums, begin, i) - at(sums, end, i);
  }

  function at(sums: Float32Array, time: number, i: number): number {
    if (time >= hours) return (hours - time) * share[i]!;
    const hour = Math.floor(time);
    const here = sums[hour * count + i]!;
    return here - (time - hour) * (here - sums[(hour + 1) * count + i]!);
  }
  return sail;
}

/** How long until the gate is open; Infinity where it does not open again. */
function waitFor(gates: readonly { readonly from: number; readonly to: number }[], time: number): number {
  let least = Infinity;
  for (const { from, to } of gates) if (to >= time) least = Math.min(least, Math.max(0, from - time));
  return least;
}
