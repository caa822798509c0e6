import { logNormalCdf, normalCdf, normalHazard, normalUpperTail } from './normal.ts';
import { normalQuantile } from './normal-quantile.ts';

/** Past so many sds below zero the closed form of the variance loses its digits, and a series in 1/depth has them all. */
const DEEP = 50;
/** Past so many, tails come near the smallest number there is. */
const FAR = 30;

/** Mean and variance of what is left above zero of a normal with that mean and sd > 0 (Johnson, Kotz and Balakrishnan, "Continuous Univariate Distributions" 1, 10.1). */
export function positivePart(mean: number, sd: number): { readonly mean: number; readonly variance: number } {
  const depth = -mean / sd;
  if (depth > DEEP) {
    const step = 1 / depth;
    const square = step * step;
    return { mean: sd * step * (1 - 2 * square), variance: sd * sd * square * (1 - 6 * square) };
  }
  const hazard = normalHazard(depth);
  return { mean: mean + sd * hazard, variance: sd * sd * (1 + hazard * (depth - hazard)) };
}

/** Of what is left above zero of that normal, the value below which a share p lies. */
export function positiveQuantile(mean: number, sd: number, p: number): number {
  const depth = -mean / sd;
  if (depth > FAR) return sd * deepQuantile(depth, p);
  const below = normalCdf(depth);
  const above = normalUpperTail(depth);
  const share = below + p * above;
  const z = share < 0.5 ? normalQuantile(share) : -normalQuantile((1 - p) * above);
  return Math.max(0, mean + sd * z);
}

/** Of what is left above zero of that normal, the share that lies below x. */
export function positiveCdf(mean: number, sd: number, x: number): number {
  if (x <= 0) return 0;
  const depth = -mean / sd;
  const z = (x - mean) / sd;
  if (depth > 0) return -Math.expm1(logNormalCdf(-z) - logNormalCdf(-depth));
  return Math.min(1, Math.max(0, (normalCdf(z) - normalCdf(depth)) / normalUpperTail(depth)));
}

/** Deep in the tail it is exponential, to the second order in 1/depth. */
function deepQuantile(depth: number, p: number): number {
  const fall = -Math.log1p(-p);
  return Math.sqrt(depth * depth + 2 * fall) - depth - fall / depth ** 3;
}
