import { gammaCdf, gammaUpperTail } from './gamma.ts';
import { gammaTerm } from './gamma-term.ts';
import { smallestCount } from './smallest-count.ts';

/** Chance of exactly k events where `mean` are expected. */
export function poissonChance(k: number, mean: number): number {
  return k === 0 ? Math.exp(-mean) : gammaTerm(k, mean);
}

/** Chance of at most k events. */
export function poissonAtMost(k: number, mean: number): number {
  return gammaUpperTail(mean, k + 1);
}

/** Chance of more than k events, right however small. */
export function poissonMoreThan(k: number, mean: number): number {
  return gammaCdf(mean, k + 1);
}

/** The smallest stock that covers the demand with at least that chance (0 < chance < 1). */
export function poissonStock(chance: number, mean: number): number {
  return smallestCount((k) => poissonAtMost(k, mean) >= chance);
}
