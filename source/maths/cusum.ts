/** One step of the chart. Sums start at 0 and never fall below it. */
export interface CusumStep {
  readonly high: number;
  readonly low: number;
  /** Where either sum has passed the limit: the way it went, and the index of the first value of the run that took it there. */
  readonly signal: { readonly way: 'up' | 'down'; readonly since: number } | null;
}

/**
 * Two-sided tabular CUSUM of values that ought to hover about 0: each side adds up what exceeds `slack` and signals above `limit` (both in the unit of the values).
 * One step a value; the sums run on after a signal.
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3; dating the change by the start of the run is standard practice
 * (Montgomery, "Introduction to Statistical Quality Control", the counters N+ and N-; from memory).
 */
export function cusum(
  values: readonly number[],
  { slack, limit }: { slack: number; limit: number },
): CusumStep[] {
  let high = 0;
  let low = 0;
  let highSince = 0;
  let lowSince = 0;
  return values.map((value, i) => {
    if (high === 0) highSince = i;
    if (low === 0) lowSince = i;
    high = Math.max(0, high + value - slack);
    low = Math.max(0, low - value - slack);
    const signal =
      high > limit
        ? ({ way: 'up', since: highSince } as const)
        : low > limit
          ? ({ way: 'down', since: lowSince } as const)
          : null;
    return { high, low, signal };
  });
}
