import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { FluidBelief } from '../inference/belief.ts';

/** Whether she may be used with it as it is, as far as the log tells. Amounts in litres. */
export interface LiveWith {
  readonly bars: readonly ('fuel leak' | 'rising' | 'falls')[];
  readonly leakClass: FluidBelief['leakClass'];
  /** Lost on a usual day; null where nothing was read yet. */
  readonly lostADayL: number | null;
  readonly aboardL: number | null;
  /** Days until the low mark, then from what is aboard. */
  readonly lastsDays: number | null;
}

/** From here on a rise is believed, as the verdict believes it. */
const RISES = 0.9;

/** What can safely be lived with: class, rate and what is aboard; and what cannot: any fuel leak, a rising level, drops that fall (model 3.7). Null for what is no fluid. */
export function liveWith(
  boat: Boat,
  condition: Condition,
  belief: FluidBelief | null,
  id: string,
): LiveWith | null {
  const fluid = boat.fluids.find((one) => one.id === id);
  if (!fluid) return null;
  const leakClass = belief?.leakClass ?? null;
  const leaks = leakClass !== null && leakClass !== 'dry';
  const lostADayL = belief?.usualDay.mean ?? null;
  const aboardL = fluid.stock === undefined ? null : (condition.spares.get(fluid.stock)?.count ?? null);
  const spareL = belief === null ? null : Math.max(0, belief.level.mean - fluid.low) + (aboardL ?? 0);
  return {
    bars: [
      ...(fluid.fuel && leaks ? (['fuel leak'] as const) : []),
      ...(!fluid.fuel && (belief?.rising ?? 0) >= RISES ? (['rising'] as const) : []),
      ...(!fluid.fuel && leakClass === 'falls' ? (['falls'] as const) : []),
    ],
    leakClass,
    lostADayL,
    aboardL,
    lastsDays: lostADayL === null || spareL === null || lostADayL <= 0 ? null : spareL / lostADayL,
  };
}
