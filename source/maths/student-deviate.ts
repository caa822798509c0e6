import { regularisedBeta } from './incomplete-beta.ts';
import { normalQuantile } from './normal-quantile.ts';

/** The standard normal deviate as far out as `t` lies in Student's distribution with so many degrees of freedom: the same share lies beyond either. */
export function studentDeviate(t: number, freedom: number): number {
  if (t === 0) return 0;
  return -Math.sign(t) * normalQuantile(Math.max(studentTail(Math.abs(t), freedom), Number.MIN_VALUE));
}

/** The share of Student's distribution beyond t > 0 (DLMF 8.17; any text on distributions: half of I_x(v/2, 1/2) with x = v / (v + t²)). */
export function studentTail(t: number, freedom: number): number {
  const square = t * t;
  const all = freedom + square;
  return regularisedBeta(freedom / all, square / all, freedom / 2, 0.5) / 2;
}
