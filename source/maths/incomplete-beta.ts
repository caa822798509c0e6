import { assert } from '../trouble.ts';
import { deviance, stirlingError } from './gamma-term.ts';

/**
 * Regularised incomplete beta function I_x(a, b) for a, b > 0, given x and its complement 1 - x (both, so that neither is lost to rounding).
 * The share above is `regularisedBeta(complement, x, b, a)`, right however small.
 *
 * Method: continued fraction DLMF 8.17.22, evaluated forward by Lentz's method, on the side where it converges fast.
 */
export function regularisedBeta(x: number, complement: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (complement <= 0) return 1;
  // The second half: where both lie beyond their mark by rounding alone, neither side would end.
  if (x > (a + 1) / (a + b + 2) && complement <= (b + 1) / (a + b + 2))
    return 1 - regularisedBeta(complement, x, b, a);
  return (betaTerm(x, complement, a, b) * fraction(x, a, b)) / a;
}

/** x^a (1-x)^b / B(a, b), in Loader's manner (see `gammaTerm`). */
function betaTerm(x: number, complement: number, a: number, b: number): number {
  const n = a + b;
  const error = stirlingError(n) - stirlingError(a) - stirlingError(b);
  return (
    Math.exp(error - deviance(a, n * x) - deviance(b, n * complement)) *
    Math.sqrt((a * b) / (2 * Math.PI * n))
  );
}

const mostTerms = 10_000;

function fraction(x: number, a: number, b: number): number {
  let ratioAbove = 1;
  let ratioBelow = 0;
  let value = 1;
  for (let n = 1; ; n += 1) {
    assert(n < mostTerms, 'the beta fraction does not end');
    const top = coefficient(n, x, a, b);
    ratioBelow = 1 / (1 + top * ratioBelow);
    ratioAbove = 1 + top / ratioAbove;
    const change = ratioAbove * ratioBelow;
    value *= change;
    if (Math.abs(change - 1) < 3e-16) break;
  }
  return 1 / value;
}

function coefficient(n: number, x: number, a: number, b: number): number {
  const m = Math.floor(n / 2);
  if (n % 2 === 0) return (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
  return (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
}
