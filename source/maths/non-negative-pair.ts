import { type Fit, leastSquares } from './least-squares.ts';

/** Two coefficients, neither below zero, and the length of what the fit leaves. */
export interface PairFit {
  readonly first: number;
  readonly second: number;
  readonly residual: number;
}

/**
 * Least squares for two regressors whose coefficients cannot be negative. Where the free fit has one below zero, the best lies on an edge: that one is zero
 * and the other *fitted anew* (clipping alone is wrong). With two regressors both edges are simply tried.
 *
 * Method: the active-set idea of Lawson and Hanson, "Solving Least Squares Problems" (1974), chapter 23.
 */
export function nonNegativePair(first: Float64Array, second: Float64Array, target: Float64Array): PairFit {
  const free = leastSquares([first, second], target);
  const [a, b] = free.estimates as unknown as [number, number];
  if (a >= 0 && b >= 0) return { first: a, second: b, residual: Math.sqrt(free.residualSumOfSquares) };
  const onlyFirst = alone(first, target);
  const onlySecond = alone(second, target);
  return onlyFirst.residual <= onlySecond.residual
    ? { first: onlyFirst.value, second: 0, residual: onlyFirst.residual }
    : { first: 0, second: onlySecond.value, residual: onlySecond.residual };
}

function alone(column: Float64Array, target: Float64Array): { value: number; residual: number } {
  const fit: Fit = leastSquares([column], target);
  const value = Math.max(0, fit.estimates[0]!);
  return { value, residual: Math.hypot(...target.map((wanted, i) => wanted - value * column[i]!)) };
}
