import type { Turns } from '../maths/turns.ts';
import { type Signal, signalsIn } from './changed.ts';
import { type Period, type ReadPeriod, readPeriod, whitenPeriod } from './period.ts';
import { priorsAfter } from './rate-prior.ts';

/** Where a period is cut in two: before the reading `since`. */
export interface Cut {
  readonly since: number;
  readonly way: Signal['way'];
  /** Whether the level, too, is better thought of anew. */
  readonly levelAnew: boolean;
}

/** So many readings are looked through at first, then four times as many: a long log is read in time that grows with its length, however often things changed. */
const FIRST_LOOK = 256;
const LONGER = 4;

/** The first change in a period: a signal that the readings round it bear out, at a reading that `counts`; null where there is none. One from the first reading on needs no bearing out. In turns. */
export function* firstCut(
  period: Period,
  leakChance: number,
  counts: (since: number, way: Signal['way']) => boolean,
): Turns<Cut | null> {
  const { readings } = period;
  let from = 0;
  for (let look = FIRST_LOOK; ; look *= LONGER) {
    const end = look < readings.length ? readings[look - 1]! : period.end;
    const signals = signalsIn(whitenPeriod({ ...period, readings: readings.slice(0, look), end }));
    yield;
    for (const { since, seen, way } of signals) {
      if (since < from) continue;
      from = since + 1;
      if (since === 0 && counts(0, way)) return { since, way, levelAnew: false };
      const places = [...new Set([since, (since + seen) >>> 1, seen])].filter(
        (at) => at > 0 && counts(at, way),
      );
      const cut = places.length > 0 ? yield* bornOut(period, places, way, leakChance) : null;
      if (cut !== null) return cut;
    }
    if (look >= readings.length) return null;
  }
}

/** A signal is taken for a change where the readings round it are so much better foretold by one, in ln. Chance alone gives such a chart one signal in 465 readings (NIST/SEMATECH 6.3.2.3), and e^6 is 403. */
const AGAINST_CHANGE = 6;
/** So many readings before it and since it are asked. */
const ASKED_BEFORE = 120;
const ASKED_SINCE = 60;

/** The best of several places as a cut; null where the readings bear out none. The level begins anew where that foretells them better: what was read is so, and a slip in the log or a top-up not logged must not look like a loss. */
function* bornOut(
  period: Period,
  places: readonly number[],
  way: Signal['way'],
  leakChance: number,
): Turns<Cut | null> {
  const { readings, end } = period;
  const from = Math.max(0, places[0]! - ASKED_BEFORE);
  const to = places.at(-1)! + ASKED_SINCE;
  const asked: Period = {
    ...period,
    start: from === 0 ? period.start : null,
    readings: readings.slice(from, to),
    end: to < readings.length ? readings[to - 1]! : end,
  };
  let best = readPeriod(asked).logEvidence + AGAINST_CHANGE;
  let cut: Cut | null = null;
  for (const since of places) {
    yield;
    const before = readUpTo(asked, since - from);
    for (const levelAnew of [true, false]) {
      yield;
      const after = readPeriod(begunAt(asked, since - from, before, leakChance, levelAnew));
      const evidence = before.logEvidence + after.logEvidence;
      if (evidence <= best) continue;
      best = evidence;
      cut = { since, way, levelAnew };
    }
  }
  return cut;
}

/** A period as far as the reading before the one given. */
export function readUpTo(period: Period, since: number): ReadPeriod {
  const { readings } = period;
  return readPeriod({ ...period, readings: readings.slice(0, since), end: readings[since - 1]! });
}

/** What is left of a period from a reading on, with losses that begin anew there; the level is what `before` says it was at the reading before, or begins anew too. */
export function begunAt(
  { fluid, readings, end }: Period,
  since: number,
  before: ReadPeriod,
  leakChance: number,
  levelAnew: boolean,
): Period {
  const { posterior, waysAfter } = before;
  const priors = priorsAfter(fluid, posterior, leakChance);
  const start = levelAnew ? null : { ...before.end, mean: posterior.level, variance: posterior.varLevel };
  return { fluid, priors, start, readings: readings.slice(since), end, ways: waysAfter };
}
