import { assert } from '../trouble.ts';
import { gammaTerm } from './gamma-term.ts';
import { normalCdf, normalUpperTail } from './normal.ts';

/**
 * Chance that a gamma variate of that shape and rate 1 lies below x (the regularised incomplete gamma function P). Shape > 0.
 * For a rate r pass x * r.
 */
export function gammaCdf(x: number, shape: number): number {
  if (x <= 0) return 0;
  if (shape > veryLarge) return normalCdf(wilsonHilfertyDeviate(x, shape));
  return x < shape + 1 ? lowerBySeries(x, shape) : 1 - upperByFraction(x, shape);
}

/** Chance that it lies above x (the regularised Q), small values right to their own last digits. */
export function gammaUpperTail(x: number, shape: number): number {
  if (x <= 0) return 1;
  if (shape > veryLarge) return normalUpperTail(wilsonHilfertyDeviate(x, shape));
  return x < shape + 1 ? 1 - lowerBySeries(x, shape) : upperByFraction(x, shape);
}

/** From here on the cube root of a gamma variate is normal to about 1e-8 (Wilson and Hilferty 1931), and the sums below would grow long. */
const veryLarge = 1e6;

function wilsonHilfertyDeviate(x: number, shape: number): number {
  return 3 * Math.sqrt(shape) * (Math.cbrt(x / shape) - 1 + 1 / (9 * shape));
}

/** Some 4 times the terms that the largest shapes take. */
const mostTerms = 30_000;

/** Abramowitz and Stegun 6.5.29. */
function lowerBySeries(x: number, shape: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > sum * 1e-17; n += 1) {
    assert(n < mostTerms, 'the gamma series does not end');
    term *= x / (shape + n);
    sum += term;
  }
  return gammaTerm(shape, x) * sum;
}

/** Abramowitz and Stegun 6.5.31, contracted (DLMF 8.9.2); evaluated forward by Lentz's method. */
function upperByFraction(x: number, shape: number): number {
  let bottom = x + 1 - shape;
  let ratioAbove = Number.POSITIVE_INFINITY;
  let ratioBelow = 1 / bottom;
  let fraction = ratioBelow;
  for (let n = 1; ; n += 1) {
    assert(n < mostTerms, 'the gamma fraction does not end');
    const top = -n * (n - shape);
    bottom += 2;
    ratioBelow = 1 / (bottom + top * ratioBelow);
    ratioAbove = bottom + top / ratioAbove;
    const change = ratioAbove * ratioBelow;
    fraction *= change;
    if (Math.abs(change - 1) < 3e-16) break;
  }
  return gammaTerm(shape, x) * shape * fraction;
}
