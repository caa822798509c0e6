import { regularisedBeta } from './incomplete-beta.ts';
import { smallestCount } from './smallest-count.ts';

/** Events to come over `exposure` when their rate is gamma distributed with that shape and rate (rate in the unit of exposure): a negative binomial. */
export interface GammaPoisson {
  readonly shape: number;
  readonly rate: number;
  readonly exposure: number;
}

/** Chance of at most k events. Johnson, Kemp and Kotz, "Univariate Discrete Distributions" (2005), 5.6. */
export function eventsAtMost(k: number, { shape, rate, exposure }: GammaPoisson): number {
  const whole = rate + exposure;
  return regularisedBeta(rate / whole, exposure / whole, shape, k + 1);
}

/** Chance of more than k events, right however small. */
export function eventsMoreThan(k: number, { shape, rate, exposure }: GammaPoisson): number {
  const whole = rate + exposure;
  return regularisedBeta(exposure / whole, rate / whole, k + 1, shape);
}

/** The smallest stock that covers the events with at least that chance (0 < chance < 1). */
export function eventsStock(chance: number, demand: GammaPoisson): number {
  return smallestCount((k) => eventsAtMost(k, demand) >= chance);
}
