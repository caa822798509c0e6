import type { Fluid } from '../boat/fluid.ts';
import type { FluidEvent } from '../condition/condition.ts';
import { type Change, signalsIn } from './changed.ts';
import { leakChanceAt } from './leak-class.ts';
import { type Period, type ReadPeriod, readPeriod, whitenPeriod } from './period.ts';
import { priorsAfter, usualPriors } from './rate-prior.ts';
import { type FluidLife, type Job, lifeOf, type Moment } from './readings.ts';

/** A fluid's life cut where its losses began anew: by work, or by themselves. */
export interface History {
  readonly life: FluidLife;
  /** The last period, to now. */
  readonly present: ReadPeriod;
  /** How the present one began, where that was by itself. */
  readonly changed: Changed | null;
  /** The last work, with the periods before it and after it. */
  readonly work: { readonly job: Job; readonly before: ReadPeriod; readonly after: ReadPeriod } | null;
}

export interface Changed {
  readonly at: number;
  readonly way: Change['way'];
  readonly before: ReadPeriod;
}

interface Part {
  readonly period: ReadPeriod;
  readonly changed: Changed | null;
}

/** Reads a fluid's whole life, period by period, each teaching the next (model 3.4, 3.5). Null where it was never read. */
export function historyOf(
  fluid: Fluid,
  events: readonly FluidEvent[],
  now: Pick<Moment, 'at' | 'runHours'>,
): History | null {
  const life = lifeOf(fluid, events);
  if (life.readings.length === 0) return null;
  let last: Part | null = null;
  let work: History['work'] = null;
  for (const { job, readings, end } of stretchesOf(life, { ...now, ...life.end })) {
    const before: ReadPeriod | null = last?.period ?? null;
    const chance = leakChanceAt(fluid, events, end.at);
    const stretch = { fluid, readings, end, ways: before?.waysAfter ?? new Map() };
    const parts: readonly Part[] =
      job === null || before === null
        ? partsOf({ ...stretch, priors: usualPriors(fluid, chance), start: null }, chance, null)
        : partsOf(afterWork(stretch, job, before, chance), chance, before);
    last = parts.at(-1)!;
    if (job !== null && before !== null) work = { job, before, after: parts[0]!.period };
  }
  return { life, present: last!.period, changed: last!.changed, work };
}

/** Work is no news before there are two readings to see the losses by. */
const READINGS_BEFORE_WORK = 2;

/** The readings between one work and the next; works with no reading between count as one. */
function stretchesOf({ readings, jobs }: FluidLife, end: Moment) {
  const cuts = jobs.filter(
    (job, i) => job.readings >= READINGS_BEFORE_WORK && job.readings !== jobs[i + 1]?.readings,
  );
  return [null, ...cuts].map((job, i) => ({
    job,
    readings: readings.slice(job?.readings ?? 0, cuts[i]?.readings),
    end: cuts[i] ?? end,
  }));
}

/** The level carries over work; each loss is anew, most likely what it was or less. Only where it was seen leaking since may it be a leak of its own. */
function afterWork(
  stretch: Pick<Period, 'fluid' | 'readings' | 'end' | 'ways'>,
  job: Job,
  { posterior }: ReadPeriod,
  leakChance: number,
): Period {
  const seen = leakChance > stretch.fluid.loss.leakChance;
  return {
    ...stretch,
    priors: priorsAfter(stretch.fluid, posterior, seen ? leakChance : 0),
    start: { ...job, mean: posterior.level, variance: posterior.varLevel },
  };
}

/** A loss that goes on looks like a change at every reading: only from this one on may a period that began with a change end by a further fall. Judgement. */
const READINGS_TO_LEARN = 3;

/** A stretch between works, cut where its losses changed by themselves. After work they may never have been what was expected: then the whole is read anew. */
function partsOf(stretch: Period, leakChance: number, beforeWork: ReadPeriod | null): readonly Part[] {
  const done: Part[] = [];
  let period = stretch;
  let changed: Changed | null = null;
  for (;;) {
    const mayBeWhole = beforeWork !== null && done.length === 0 && changed === null;
    const began = changed !== null;
    const cut = firstCut(period, leakChance, ({ since, way }) =>
      since === 0 ? mayBeWhole : !began || way === 'up' || since >= READINGS_TO_LEARN,
    );
    if (cut === null) return [...done, { period: readPeriod(period), changed }];
    const { since, way, levelAnew } = cut;
    const { fluid, readings } = period;
    const { at } = readings[since]!;
    if (since === 0) {
      changed = { at, way, before: beforeWork! };
      period = { ...stretch, priors: priorsAfter(fluid, beforeWork!.posterior, leakChance) };
      continue;
    }
    const before = readUpTo(period, since);
    done.push({ period: before, changed });
    changed = { at, way, before };
    period = begunAt(period, since, before, leakChance, levelAnew);
  }
}

/** So many readings are looked through at first, then four times as many: a long log is read in time that grows with its length, however often things changed. */
const FIRST_LOOK = 256;
const LONGER = 4;

interface Cut extends Change {
  /** Whether the level, too, is better thought of anew. */
  readonly levelAnew: boolean;
}

/** The first signal in a period that counts and that the readings round it bear out; null where there is none. */
function firstCut(period: Period, leakChance: number, counts: (change: Change) => boolean): Cut | null {
  const { readings } = period;
  let from = 0;
  for (let look = FIRST_LOOK; ; look *= LONGER) {
    const end = look < readings.length ? readings[look - 1]! : period.end;
    const signals = signalsIn(whitenPeriod({ ...period, readings: readings.slice(0, look), end }));
    for (const signal of signals) {
      if (signal.since < from || !counts(signal)) continue;
      const cut = signal.since === 0 ? { ...signal, levelAnew: false } : bornOut(period, signal, leakChance);
      if (cut !== null) return cut;
      from = signal.since + 1;
    }
    if (look >= readings.length) return null;
  }
}

/** A signal is taken for a change where the readings round it are so much better foretold by one, in ln: it may seem to have been at any of some twenty readings. Judgement, tried out on healthy fluids. */
const AGAINST_CHANGE = 6;
/** So many readings before it and since it are asked. */
const ASKED_BEFORE = 120;
const ASKED_SINCE = 60;

/** A signal as a cut; null where the readings do not bear it out. The level begins anew where that foretells them better: what was read is so, and a slip in the log or a top-up not logged must not look like a loss. */
function bornOut(period: Period, signal: Change, leakChance: number): Cut | null {
  const { readings, end } = period;
  const from = Math.max(0, signal.since - ASKED_BEFORE);
  const to = signal.since + ASKED_SINCE;
  const asked: Period = {
    ...period,
    start: from === 0 ? period.start : null,
    readings: readings.slice(from, to),
    end: to < readings.length ? readings[to - 1]! : end,
  };
  const since = signal.since - from;
  const before = readPeriod({
    ...asked,
    readings: asked.readings.slice(0, since),
    end: asked.readings[since - 1]!,
  });
  const [anew, onwards] = [true, false].map(
    (levelAnew) => readPeriod(begunAt(asked, since, before, leakChance, levelAnew)).logEvidence,
  ) as [number, number];
  const better = before.logEvidence + Math.max(anew, onwards) - readPeriod(asked).logEvidence;
  return better < AGAINST_CHANGE ? null : { ...signal, levelAnew: anew > onwards };
}

/** A period as far as the reading before the one given. */
function readUpTo(period: Period, since: number): ReadPeriod {
  const { readings } = period;
  return readPeriod({ ...period, readings: readings.slice(0, since), end: readings[since - 1]! });
}

/** What is left of a period from a reading on, with losses that begin anew there; the level is what `before` says it was at the reading before, or begins anew too. */
function begunAt(
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
