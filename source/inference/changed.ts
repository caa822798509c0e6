import { cusum } from '../maths/cusum.ts';
import type { WhitenedPeriod } from './period.ts';
import type { TwoParts } from './rate-prior.ts';

/** Model 3.5, after NIST/SEMATECH 6.3.2.3: in sds. */
const SLACK = 0.5;
const LIMIT = 5;

export interface Signal {
  /** The reading of the period from which the run began that led to it, and the one at which it came. */
  readonly since: number;
  readonly seen: number;
  /** Up: levels above what was expected. */
  readonly way: 'up' | 'down';
}

/** Where a period's losses may have changed by themselves: each signal of a CUSUM over its one-step-ahead errors, once. */
export function signalsIn(period: WhitenedPeriod): readonly Signal[] {
  const signals: Signal[] = [];
  for (const [seen, { signal }] of cusum(oneStepErrors(period), { slack: SLACK, limit: LIMIT }).entries())
    if (signal !== null && signal.since !== signals.at(-1)?.since) signals.push({ ...signal, seen });
  return signals;
}

/**
 * How far each reading lay from what those before it foretold, in sds; one off the stick lay at least as far as the stick's end. Recursive least squares over the whitened rows, from the widest of the prior's parts.
 * Source: Brown, Durbin and Evans, "Techniques for testing the constancy of regression relationships over time", J. R. Statist. Soc. B 37 (1975), 149-192: recursive residuals; from memory.
 */
function oneStepErrors({ rows, priors, wayPriors, readings, fluid }: WhitenedPeriod): number[] {
  const width = rows.columns.length;
  const anything = { mean: 0, sd: LOOSE * (fluid.full - fluid.low) };
  const known = [widest(priors.run), widest(priors.rest), ...wayPriors];
  const mean = Float64Array.from({ length: width }, (_, j) => (known[j] ?? anything).mean);
  const covariance = Array.from({ length: width }, (_, j) => {
    const row = new Float64Array(width);
    row[j] = (known[j] ?? anything).sd ** 2;
    return row;
  });
  const along = new Float64Array(width);
  let shortfall = 2 + wayPriors.length;
  return Array.from(rows.target, (seen, i) => {
    let total = 1;
    let apart = seen;
    for (let j = 0; j < width; j += 1) {
      along[j] = 0;
      for (let k = 0; k < width; k += 1) along[j]! += covariance[j]![k]! * rows.columns[k]![i]!;
      total += along[j]! * rows.columns[j]![i]!;
      apart -= mean[j]! * rows.columns[j]![i]!;
    }
    for (let j = 0; j < width; j += 1) {
      mean[j]! += (along[j]! / total) * apart;
      for (let k = 0; k < width; k += 1) covariance[j]![k]! -= (along[j]! * along[k]!) / total;
    }
    const { off } = readings[i]!;
    if (off === 'on') return apart / Math.sqrt(total);
    const own = along[shortfall]! * rows.columns[shortfall]![i]!;
    shortfall += 1;
    const toTheEnd = apart / Math.sqrt(total - own);
    return off === 'below' ? Math.min(0, toTheEnd) : Math.max(0, toTheEnd);
  });
}

/** A reading off the stick foretells nothing of its shortfall, in times low to full. */
const LOOSE = 10;

function widest({ usual, leak }: TwoParts) {
  return leak.chance > 0 ? leak : usual;
}
