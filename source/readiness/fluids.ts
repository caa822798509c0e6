import { enginesOf } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { FluidBelief, FluidDraws } from '../inference/belief.ts';
import { type Latest, never } from './latest.ts';
import type { Passages } from './passages.ts';

/** A fluid through the stretch, drawn once: all its what-ifs are made of these. */
export interface FluidAhead {
  readonly fluid: Fluid;
  readonly draws: FluidDraws;
  /** Lost from leaving to the end of the stretch, L. */
  readonly stretchL: Float64Array;
  /** Lost in an hour of waiting, L. */
  readonly waitingL: Float64Array;
}

/** Below the reserve (the low mark unless set) a fluid fails, L. */
export function reserveL(fluid: Fluid): number {
  return fluid.reserve ?? fluid.low;
}

/**
 * Draws a fluid's level and losses and lays them along the stretch (model 3.8): by the weighted running hour and by the day,
 * times the passage's own factor for how losses vary from day to day (3.1).
 */
export function fluidAhead(fluid: Fluid, belief: FluidBelief, passages: Passages): FluidAhead {
  const { count, hours, reserveDays } = passages;
  const draws = belief.draw(count, (part) => passages.streamOf(`fluid/${fluid.id}/${part}`));
  const vary = passages.streamOf(`fluid/${fluid.id}/vary`);
  const engines = enginesOf(fluid).map((engine) => ({
    motored: passages.motoring.get(engine)!,
    waiting: passages.waiting.get(engine)!,
  }));
  const stretchL = new Float64Array(count);
  const waitingL = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const days = hours[i]! / 24 + reserveDays;
    const factor = Math.max(0, 1 + (fluid.vary * vary.normal()) / Math.sqrt(Math.max(days, 1)));
    let motored = 0;
    let aDay = 0;
    for (const engine of engines) {
      motored += engine.motored[i]!;
      aDay += fluid.atAnchor * engine.waiting[i]!;
    }
    const [run, rest] = [draws.run[i]!, draws.rest[i]!];
    stretchL[i] = factor * (run * (aDay * reserveDays + motored) + rest * days);
    waitingL[i] = (factor * (run * aDay + rest)) / 24;
  }
  return { fluid, draws, stretchL, waitingL };
}

/** What is poured in before leaving: to the full mark, or as much as there is. */
export function levelAfter(ahead: FluidAhead, pouredL: number, i: number): number {
  const level = ahead.draws.levelL[i]!;
  return pouredL === 0 ? level : Math.max(level, Math.min(ahead.fluid.full, level + pouredL));
}

/**
 * The latest departures of fluids that share one stock (model 3.8), one array a fluid. What each wants of the stock when leaving at d is
 * max(0, c + r d); up to leaving all may be topped up, after it only those with `topUpUnderWay`, so the others fail where the stretch
 * alone takes them below their reserve. Where the wants together exceed the stock, all that want something fail.
 */
export function sharedStockLatest(
  group: readonly { ahead: FluidAhead; pouredL: number }[],
  stockL: number,
  count: number,
): readonly Latest[] {
  const latest = group.map(() => never(count));
  const wants: Want[] = group.map(() => ({ at0: 0, anHour: 0 }));
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j < group.length; j += 1) setWant(wants[j]!, group[j]!, i);
    const enough = wants.length === 1 ? lastHourOfOne(wants[0]!, stockL) : lastHourWithin(wants, stockL);
    for (let j = 0; j < group.length; j += 1) {
      const want = wants[j]!;
      latest[j]![i] = want.at0 === Infinity ? -Infinity : Math.max(enough, firstWant(want));
    }
  }
  return latest;
}

function setWant(want: Want, { ahead, pouredL }: { ahead: FluidAhead; pouredL: number }, i: number): void {
  want.at0 = ahead.stretchL[i]! + reserveL(ahead.fluid) - levelAfter(ahead, pouredL, i);
  want.anHour = ahead.waitingL[i]!;
  if (want.at0 > 0 && !ahead.fluid.topUpUnderWay) want.at0 = Infinity;
}

/** Most fluids have their stock to themselves: no kinks but the first. */
function lastHourOfOne({ at0, anHour }: Want, stockL: number): number {
  if (at0 > stockL) return -Infinity;
  return anHour > 0 ? (stockL - at0) / anHour : Infinity;
}

interface Want {
  /** L, when leaving now; below zero while there is more than enough. */
  at0: number;
  /** L more for each hour of waiting. */
  anHour: number;
}

/** What it wants of the stock when leaving at that hour; that of a stock short even now is what it wants now. */
function wantedAt({ at0, anHour }: Want, hour: number): number {
  return anHour === 0 || hour === -Infinity ? at0 : at0 + anHour * hour;
}

/** Until when a fluid needs nothing from the stock. */
function firstWant({ at0, anHour }: Want): number {
  if (at0 > 0) return -Infinity;
  return anHour > 0 ? -at0 / anHour : Infinity;
}

/** The last d at which the wants together stay within the stock: piecewise linear, so from kink to kink. Fluids that fail whatever is aboard (infinite want) take nothing. */
function lastHourWithin(wants: readonly Want[], stockL: number): number {
  let hour = 0;
  while (true) {
    let sum = 0;
    let slope = 0;
    let next = Infinity;
    for (const want of wants) {
      if (want.at0 === Infinity) continue;
      const from = firstWant(want);
      if (from > hour) next = Math.min(next, from);
      else {
        sum += Math.max(0, wantedAt(want, hour));
        slope += want.anHour;
      }
    }
    if (sum > stockL) return hour === 0 ? -Infinity : hour;
    const within = slope > 0 ? hour + (stockL - sum) / slope : Infinity;
    if (within <= next) return within;
    hour = next;
  }
}
