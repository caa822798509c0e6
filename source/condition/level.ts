import type { Fluid } from '../boat/fluid.ts';

/** A level given in litres, or as a share where 0 is the low mark and 1 the full mark, in litres; null where neither is given. */
export function levelOf(
  fluid: Fluid,
  told: { level?: number | undefined; share?: number | undefined },
): number | null {
  if (told.level !== undefined) return told.level;
  return told.share === undefined ? null : fluid.low + told.share * (fluid.full - fluid.low);
}

/** Room above a tank's full mark, as a part of the tank: marks are painted by people. Judgement, no source. */
const ROOM_OVER_FULL = 0.25;

/** The most it can hold, L: a tank (low 0) its full mark and a quarter; a sump with a stick as much above the full mark as the low mark lies below it. */
export function mostIn({ low, full }: Fluid): number {
  return low > 0 ? full + (full - low) : full * (1 + ROOM_OVER_FULL);
}

/** Whether no tank with these marks can show such a level. */
export function isOutsideTank(fluid: Fluid, levelL: number): boolean {
  return levelL < 0 || levelL > mostIn(fluid);
}
