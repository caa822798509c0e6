import type { Fluid } from '../boat/fluid.ts';
import { normalQuantile } from '../maths/normal-quantile.ts';
import type { FluidBelief, WaitingBelief } from './belief.ts';
import { readingErrorL } from './readings.ts';

/** Twice the normal deviate of 9 in 10: two answers this many sds apart are told apart so surely, whichever is right. */
const APART = 2 * normalQuantile(0.9);
/** A charging run where none is usual, h. Judgement. */
const USUAL_RUN_HOURS = 1;
/** More dips than this nobody makes. Judgement. */
const MOST_RUNS = 30;

/**
 * What would tell running from lying without going short of charge (model 3.6): to dip before and after so many of the charging runs that are made anyway. Were all that goes lost by running it would fall in
 * them by as much as it loses in that running; were it lost lying, by next to nothing. Null where so many dips would not do.
 */
export function experimentFor(
  fluid: Fluid,
  { usualDay, usualHours }: Pick<FluidBelief, 'usualDay' | 'usualHours'>,
  engines: readonly string[],
  waiting: ReadonlyMap<string, WaitingBelief>,
): FluidBelief['toSettle'] {
  const hours = chargingHours(engines, waiting);
  if (usualHours <= 0) return null;
  const ifRunning = (usualDay.mean / usualHours) * fluid.atAnchor * hours;
  const ifLying = (usualDay.mean * hours) / 24;
  const apart = ifRunning - ifLying;
  if (apart <= 0) return null;
  const runs = Math.max(1, Math.ceil((APART * Math.SQRT2 * readingErrorL(fluid)) ** 2 / apart ** 2));
  return runs > MOST_RUNS ? null : { runs, hours };
}

/** Of a day while lying, by the engine that runs most. */
function chargingHours(engines: readonly string[], waiting: ReadonlyMap<string, WaitingBelief>): number {
  const hours = engines.map((engine) => {
    const aDay = waiting.get(engine);
    return aDay === undefined || 'fixed' in aDay ? 0 : aDay.shape / aDay.rate;
  });
  const most = Math.max(0, ...hours);
  return most > 0 ? most : USUAL_RUN_HOURS;
}
