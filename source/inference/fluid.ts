import { enginesOf } from '../boat/boat.ts';
import type { Engine } from '../boat/engine.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Condition } from '../condition/condition.ts';
import { MS_A_DAY } from '../condition/time.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';
import type { FluidBelief, WaitingBelief } from './belief.ts';
import { drawsOf } from './draws.ts';
import { experimentFor } from './experiment.ts';
import { readingHistory } from './history.ts';
import { effectOf } from './job-effect.ts';
import { leakChanceAt, leakClassAt, leastLossLPerDay } from './leak-class.ts';
import { levelHistory } from './level-history.ts';
import { overPair } from './pair.ts';
import type { Posterior } from './posterior.ts';
import { leakTeller, type RatePriors, usualPriors } from './rate-prior.ts';
import { riseChance } from './rising.ts';
import { hoursOnAUsualDay, hoursUnmetered, unmeteredSince } from './running-since.ts';
import { daySpread, fewMembers, levelSpread, runSpread } from './spreads.ts';

/** What a fluid's readings say of it now (model 3); null where it was never read. */
export function believeFluid(
  fluid: Fluid,
  engines: readonly Engine[],
  condition: Condition,
  waiting: ReadonlyMap<string, WaitingBelief>,
): FluidBelief | null {
  return inOneGo(believingFluid(fluid, engines, condition, waiting));
}

/** The same in turns. */
export function* believingFluid(
  fluid: Fluid,
  engines: readonly Engine[],
  condition: Condition,
  waiting: ReadonlyMap<string, WaitingBelief>,
): Turns<FluidBelief | null> {
  const { events, runHours } = condition.fluids.get(fluid.id)!;
  const { at } = condition;
  const history = yield* readingHistory(fluid, events, { at, runHours });
  if (history === null) return null;
  yield;
  const { present, changed, work, life } = history;
  const { posterior } = present;
  const unmetered = unmeteredSince(fluid, life.readings.at(-1)!.at, condition);
  const hours = hoursOnAUsualDay(fluid, engines, condition);
  const leak = leakWeights(posterior, usualPriors(fluid, leakChanceAt(fluid, events, at)));
  yield;
  const lately = changed !== null && at - changed.at < NEWS_MS ? changed : null;
  const usualDay = daySpread(posterior, hours);
  yield;
  const split = cannotTell(leak) ? 'cannot tell' : 'known';
  const level = levelSpread(posterior, hoursUnmetered(unmetered, waiting));
  return {
    level,
    lately: levelHistory(history, events, level, condition),
    run: runSpread(posterior),
    rest: daySpread(posterior, 0),
    usualDay,
    usualHours: hours,
    leak,
    split,
    toSettle:
      split === 'known'
        ? null
        : experimentFor(fluid, { usualDay, usualHours: hours }, enginesOf(fluid), waiting),
    job: work && effectOf(work.job, work.before, work.after, hours),
    changedAt: lately?.at ?? null,
    rising: riseChance(present, lately),
    leakClass: leakClassAt(fluid, events, at),
    leastLossLPerDay: leastLossLPerDay(fluid, events, at),
    draw: (count, streamOf, hoursADay) => drawsOf(posterior, unmetered, count, streamOf, hoursADay),
  };
}

/** A change by itself is news for so long. Judgement: as dated things are (model 1). */
const NEWS_MS = 30 * MS_A_DAY;
/** Model 3.6. */
const LEAKS = 0.5;
const TOLD_APART = 0.8;

function cannotTell({ tight, running, lying, both }: FluidBelief['leak']): boolean {
  return tight < LEAKS && Math.max(running, lying, both) < TOLD_APART;
}

/** The chances of each kind of leak: that so large a loss is one (model 3.2). Before any work these are the weights of the four kinds themselves. */
function leakWeights(posterior: Posterior, priors: RatePriors): FluidBelief['leak'] {
  const [isByHour, isByDay] = [leakTeller(priors.run), leakTeller(priors.rest)];
  let [running, lying, both, all] = [0, 0, 0, 0];
  for (const { pair, weight } of fewMembers(posterior))
    overPair(pair, POINTS, (run, rest, share) => {
      const [byHour, byDay] = [isByHour(run), isByDay(rest)];
      all += weight * share;
      running += weight * share * byHour * (1 - byDay);
      lying += weight * share * (1 - byHour) * byDay;
      both += weight * share * byHour * byDay;
    });
  const tight = Math.max(0, all - running - lying - both);
  return { tight: tight / all, running: running / all, lying: lying / all, both: both / all };
}

const POINTS = 6;
