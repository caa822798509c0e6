import type { CheckRecord } from '../condition/condition.ts';
import { cusum } from '../maths/cusum.ts';
import { gammaQuantile } from '../maths/gamma-quantile.ts';

/** How often the bilge pump cuts in, and whether that has changed. Instants are ms. */
export interface PumpRate extends DayRate {
  readonly since: number;
  /** Before the change; null where there was none. */
  readonly before: DayRate | null;
}

/** A rate, times a day; 8 chances in 10 that it lies between p10 and p90. */
interface DayRate {
  readonly perDay: number;
  readonly p10: number;
  readonly p90: number;
}

/** Judgement: fewer counts show no change. */
const LEAST_COUNTS = 5;
/** NIST/SEMATECH 6.3.2.3, in sds. */
const CHART = { slack: 0.5, limit: 5 };

/**
 * The pump's cycles a day as a rate, from counts noted as answers to its check; null with fewer than five. A change by itself shows on a CUSUM over how far each
 * count lies from those before it, made even by Anscombe's root (Biometrika 35, 1948, 246-254; from memory): then the rate starts anew.
 */
export function pumpRate({ answers }: Pick<CheckRecord, 'answers'>): PumpRate | null {
  const counts = answers.flatMap(({ at, value }) => (value === null || value < 0 ? [] : [{ at, value }]));
  if (counts.length < LEAST_COUNTS) return null;
  let from = 0;
  let before: DayRate | null = null;
  for (;;) {
    const part = counts.slice(from).map(({ value }) => value);
    const signal = cusum(errorsOf(part), CHART).find((step) => step.signal !== null)?.signal;
    if (!signal || signal.since === 0) return { ...rateOf(part), since: counts[from]!.at, before };
    before = rateOf(part.slice(0, signal.since));
    from += signal.since;
  }
}

/**
 * The rate of counts of a day each: the gamma posterior of a Poisson mean under Jeffreys' prior (shape + 1/2), the counts worth fewer by as many times as they
 * stray further than Poisson counts would (quasi-Poisson: McCullagh and Nelder, Generalized Linear Models, 1989, ch. 6; from memory).
 */
function rateOf(counts: readonly number[]): DayRate {
  const perDay = mean(counts);
  const variance =
    counts.reduce((sum, count) => sum + (count - perDay) ** 2, 0) / Math.max(1, counts.length - 1);
  const worth = counts.length / Math.max(1, perDay > 0 ? variance / perDay : 1);
  const quantile = (p: number) => gammaQuantile(p, worth * perDay + 0.5) / worth;
  return { perDay, p10: quantile(0.1), p90: quantile(0.9) };
}

function errorsOf(counts: readonly number[]): readonly number[] {
  return counts.map((count, i) => {
    if (i === 0) return 0;
    const root = (value: number) => 2 * Math.sqrt(value + 3 / 8);
    return (root(count) - root(mean(counts.slice(0, i)))) / Math.sqrt(1 + 1 / i);
  });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
