import { enginesOf } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { FluidBelief, FluidDraws } from '../inference/belief.ts';
import { type Bits, bitsAt } from './bits.ts';
import type { Passages } from './passages.ts';
import type { Room } from './room.ts';

/** A fluid through the stretch, drawn once: all its what-ifs are made of these. One value a passage. */
export interface FluidAhead {
  readonly fluid: Fluid;
  readonly engines: readonly string[];
  readonly draws: FluidDraws;
  /** Lost from leaving to the end of the stretch besides what motoring takes, L. */
  readonly stretchL: Float64Array;
  /** Lost in an hour of motoring, L. */
  readonly motoringL: Float64Array;
  /** Lost in an hour of waiting, L. */
  readonly waitingL: Float64Array;
  /** Where drops were seen to fall: the least they take from leaving to the end of the stretch, L; else null. */
  readonly fallsL: Float64Array | null;
}

/** Where drops fall what is aboard must cover so many times the loss: model 3.7. */
const FALLS_COVERED = 2;

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
  const draws = belief.draw(
    count,
    (part) => passages.streamOf(`fluid/${fluid.id}/${part}`),
    (engine) => passages.waiting.get(engine)!,
  );
  const vary = passages.streamOf(`fluid/${fluid.id}/vary`);
  const engines = enginesOf(fluid);
  const waiting = engines.map((engine) => passages.waiting.get(engine)!);
  const stretchL = new Float64Array(count);
  const motoringL = new Float64Array(count);
  const waitingL = new Float64Array(count);
  const least = belief.leastLossLPerDay;
  for (let i = 0; i < count; i += 1) {
    const days = hours[i]! / 24 + reserveDays;
    const factor = Math.max(0, 1 + (fluid.vary * vary.normal()) / Math.sqrt(Math.max(days, 1)));
    let aDay = 0;
    for (const one of waiting) aDay += fluid.atAnchor * one[i]!;
    const [run, rest] = [factor * draws.run[i]!, factor * draws.rest[i]!];
    stretchL[i] = run * aDay * reserveDays + rest * days;
    motoringL[i] = run;
    waitingL[i] = Math.max(run * aDay + rest, least) / 24;
  }
  const fallsL = least > 0 ? hours.map((underWay) => least * (underWay / 24 + reserveDays)) : null;
  return { fluid, engines, draws, stretchL, motoringL, waitingL, fallsL };
}

/** Lost from leaving at that hour to the end of the stretch, L. */
export function lostL(
  { engines, stretchL, motoringL }: FluidAhead,
  hour: number,
  passages: Passages,
): Float64Array {
  if (engines.length === 0) return stretchL;
  const motored = passages.motoredBy(engines, hour);
  return stretchL.map((lost, i) => lost + motoringL[i]! * motored[i]!);
}

export interface Filled {
  readonly ahead: FluidAhead;
  /** Poured in before leaving, L. */
  readonly pouredL: number;
}

/** What is left of a fluid that has its stock to itself: after leaving the stock counts only where it can be topped up under way, so the others must also last the stretch without it. */
export function roomsOf(filled: Filled, stockL: number): readonly Room[] {
  const { ahead } = filled;
  const withStock = roomsWith(filled, stockL, ahead.waitingL);
  return ahead.fluid.topUpUnderWay
    ? withStock
    : [...withStock, ...roomsWith(filled, 0, new Float64Array(ahead.waitingL.length))];
}

/** Room for the loss; where drops fall for twice the loss, and for twice the least they take. */
function roomsWith(filled: Filled, stockL: number, anHour: Float64Array): readonly Room[] {
  const { fluid, stretchL, motoringL, engines, fallsL } = filled.ahead;
  const above = stretchL.map((_, i) => levelAfter(filled, i) + stockL - reserveL(fluid));
  const times = fallsL === null ? 1 : FALLS_COVERED;
  const forLoss: Room = {
    at0: above.map((room, i) => room - times * stretchL[i]!),
    anHour,
    anEngineHour:
      engines.length === 0 ? null : times === 1 ? motoringL : motoringL.map((lost) => times * lost),
    engines,
  };
  if (fallsL === null) return [forLoss];
  const at0 = above.map((room, i) => room - times * fallsL[i]!);
  return [forLoss, { at0, anHour, anEngineHour: null, engines: [] }];
}

/** To the full mark, or as much as was poured. */
function levelAfter({ ahead: { draws, fluid }, pouredL }: Filled, i: number): number {
  const level = draws.levelL[i]!;
  return pouredL === 0 ? level : Math.max(level, Math.min(fluid.full, level + pouredL));
}

/**
 * The passages in which each of several fluids on one stock holds when leaving at that hour (model 3.8). What each wants of the stock is its
 * shortfall below its reserve; where the wants together exceed the stock, all that want something fail.
 */
export function heldOnSharedStock(
  group: readonly Filled[],
  stockL: number,
  hour: number,
  passages: Passages,
): readonly Bits[] {
  const { count } = passages;
  const wants = group.map((filled) => wantsAt(filled, hour, passages));
  const together = new Float64Array(count);
  for (const want of wants)
    for (let i = 0; i < count; i += 1)
      if (want[i]! !== Infinity) together[i] = together[i]! + Math.max(0, want[i]!);
  return wants.map((want) =>
    bitsAt(
      want.map((wanted, i) => (wanted > 0 && (wanted === Infinity || together[i]! > stockL) ? -1 : 0)),
      0,
    ),
  );
}

/** What a fluid wants of the stock, L; below zero while there is more than enough, Infinity where no stock can help: it is short under way and cannot be topped up there. */
function wantsAt(filled: Filled, hour: number, passages: Passages): Float64Array {
  const { ahead } = filled;
  return lostL(ahead, hour, passages).map((lost, i) => {
    const covered = ahead.fallsL === null ? lost : FALLS_COVERED * Math.max(lost, ahead.fallsL[i]!);
    const underWay = covered + reserveL(ahead.fluid) - levelAfter(filled, i);
    if (underWay > 0 && !ahead.fluid.topUpUnderWay) return Infinity;
    return underWay + ahead.waitingL[i]! * hour;
  });
}
