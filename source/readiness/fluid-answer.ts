import type { Fluid } from '../boat/fluid.ts';
import type { FluidBelief, Spread } from '../inference/belief.ts';
import type { FluidFigures } from './answer.ts';
import { type FluidAhead, lostL, reserveL } from './fluids.ts';
import type { Passages } from './passages.ts';

const MS_AN_HOUR = 3_600_000;
const MS_A_DAY = 24 * MS_AN_HOUR;
/** Model 3.8: look again before 1 chance in 10 of reaching the low mark. */
const LOOK_AGAIN_CHANCE = 0.1;
/** What is aboard is said to last so many days where it does in 9 of 10. */
const GONE_CHANCE = 0.1;
/** Further ahead than ten years nothing is foretold. */
const MOST_DAYS = 3650;

/** What is to come of a fluid that is believed to be something: how long it lasts, where it will stand, when to look again. `stockL` null: it has no stock aboard. */
export function fluidFigures(
  fluid: Fluid,
  belief: FluidBelief,
  ahead: FluidAhead,
  stockL: number | null,
  passages: Passages,
): FluidFigures {
  const lasting = (stock: number) => lastingDays(fluid, belief, ahead, stock);
  return {
    lookAgain: lookAgainAfter(fluid, belief, ahead, passages),
    endL: notBelowNothing(spreadOf(levelsAtEnd(ahead, passages))),
    endsAt: stretchEnds(passages),
    lasts: { days: lasting(0), withStores: stockL === null ? null : lasting(stockL) },
  };
}

/** By engine hours under way where running is most of the loss, else by days of waiting. Null where that is further off than anything is foretold. */
function lookAgainAfter(
  fluid: Fluid,
  belief: FluidBelief,
  { draws, waitingL }: FluidAhead,
  { count }: Passages,
): FluidFigures['lookAgain'] {
  const byHours = fluid.engine !== undefined && belief.run.mean > belief.rest.mean / 24;
  const time = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const aboveLow = draws.levelL[i]! - fluid.low;
    const loss = byHours ? draws.run[i]! + draws.rest[i]! / 24 : 24 * waitingL[i]!;
    time[i] = aboveLow <= 0 ? 0 : aboveLow / loss;
  }
  const until = time.sort()[Math.floor(LOOK_AGAIN_CHANCE * count)]!;
  if (until / (byHours ? 24 : 1) > MOST_DAYS) return null;
  return byHours ? { engineHours: until } : { days: until };
}

/** Days like the usual ones until what is in it and so much more is down to what is to be kept. */
function lastingDays(
  fluid: Fluid,
  { usualHours, leastLossLPerDay }: FluidBelief,
  { draws }: FluidAhead,
  stockL: number,
): number | 'beyond' {
  const days = draws.levelL.map((level, i) => {
    const left = level + stockL - reserveL(fluid);
    const aDay = Math.max(usualHours * draws.run[i]! + draws.rest[i]!, leastLossLPerDay);
    return left <= 0 ? 0 : left / aDay;
  });
  const lasts = days.sort()[Math.floor(GONE_CHANCE * days.length)]!;
  return lasts > MOST_DAYS ? 'beyond' : lasts;
}

/** Levels at the end of the stretch, leaving now, L. */
function levelsAtEnd(ahead: FluidAhead, passages: Passages): Float64Array {
  return lostL(ahead, 0, passages).map((lost, i) => ahead.draws.levelL[i]! - lost);
}

/** As the level now is told: nothing holds less than nothing. */
function notBelowNothing({ mean, sd, p10, p90 }: Spread): Spread {
  return { mean: Math.max(0, mean), sd, p10: Math.max(0, p10), p90: Math.max(0, p90) };
}

/** When the stretch ends on average, leaving now, ms. */
function stretchEnds({ now, hours, reserveDays }: Passages): number {
  const underWay = hours.reduce((sum, one) => sum + one, 0) / hours.length;
  return now + underWay * MS_AN_HOUR + reserveDays * MS_A_DAY;
}

/** Mean, sd and 10/90 % of simulated values. */
function spreadOf(values: Float64Array): Spread {
  const sorted = values.toSorted();
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  const at = (share: number) => sorted[Math.floor(share * values.length)]!;
  return { mean, sd: Math.sqrt(variance), p10: at(0.1), p90: at(0.9) };
}
