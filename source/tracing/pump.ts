import type { CheckRecord } from '../condition/condition.ts';
import { cusum } from '../maths/cusum.ts';

/** How often the bilge pump cuts in, times a day, and whether that has changed. */
export interface PumpRate {
  readonly perDay: number;
  readonly since: number;
  /** Before the change; null where there was none. */
  readonly before: number | null;
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
  let before: number | null = null;
  for (;;) {
    const part = counts.slice(from).map(({ value }) => value);
    const signal = cusum(errorsOf(part), CHART).find((step) => step.signal !== null)?.signal;
    if (!signal || signal.since === 0) return { perDay: mean(part), since: counts[from]!.at, before };
    before = mean(part.slice(0, signal.since));
    from += signal.since;
  }
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
