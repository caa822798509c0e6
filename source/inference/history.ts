import type { Fluid } from '../boat/fluid.ts';
import type { FluidEvent } from '../condition/condition.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';
import type { Signal } from './changed.ts';
import { begunAt, type Cut, firstCut, readUpTo } from './cut.ts';
import { leakChanceAt } from './leak-class.ts';
import { type Period, type ReadPeriod, readPeriod } from './period.ts';
import { priorsAfter, usualPriors } from './rate-prior.ts';
import { type FluidLife, type Job, lifeOf, type Moment } from './readings.ts';

/** A fluid's life cut where its losses began anew: by work, or by themselves. */
export interface History {
  readonly life: FluidLife;
  /** Oldest first. */
  readonly periods: readonly ReadPeriod[];
  /** The last period, to now. */
  readonly present: ReadPeriod;
  /** How the present one began, where that was by itself. */
  readonly changed: Changed | null;
  /** The last work, with the periods before it and after it. */
  readonly work: { readonly job: Job; readonly before: ReadPeriod; readonly after: ReadPeriod } | null;
}

export interface Changed {
  readonly at: number;
  readonly way: Signal['way'];
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
  return inOneGo(readingHistory(fluid, events, now));
}

/** The same in turns. */
export function* readingHistory(
  fluid: Fluid,
  events: readonly FluidEvent[],
  now: Pick<Moment, 'at' | 'runHours'>,
): Turns<History | null> {
  const life = lifeOf(fluid, events);
  if (life.readings.length === 0) return null;
  const periods: ReadPeriod[] = [];
  let last: Part | null = null;
  let work: History['work'] = null;
  for (const { job, readings, end } of stretchesOf(life, { ...now, ...life.end })) {
    const before: ReadPeriod | null = last?.period ?? null;
    const chance = leakChanceAt(fluid, events, end.at);
    const stretch = { fluid, readings, end, ways: before?.waysAfter ?? new Map() };
    const period: Period =
      job === null || before === null
        ? { ...stretch, priors: usualPriors(fluid, chance), start: null }
        : afterWork(stretch, job, before, chance);
    const parts: readonly Part[] = yield* partsOf(period, chance, job === null ? null : before);
    last = parts.at(-1)!;
    periods.push(...parts.map(({ period }) => period));
    if (job !== null && before !== null) work = { job, before, after: parts[0]!.period };
  }
  return { life, periods, present: last!.period, changed: last!.changed, work };
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
function* partsOf(
  stretch: Period,
  leakChance: number,
  beforeWork: ReadPeriod | null,
): Turns<readonly Part[]> {
  const done: Part[] = [];
  let period = stretch;
  let changed: Changed | null = null;
  for (;;) {
    const mayBeWhole: boolean = beforeWork !== null && done.length === 0 && changed === null;
    const began: boolean = changed !== null;
    yield;
    const cut: Cut | null = yield* firstCut(period, leakChance, (since, way): boolean =>
      since === 0 ? mayBeWhole : !began || way === 'up' || since >= READINGS_TO_LEARN,
    );
    if (cut === null) return [...done, { period: readPeriod(period), changed }];
    const { since, way, levelAnew }: Cut = cut;
    const { fluid, readings } = period;
    const { at }: Moment = readings[since]!;
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
