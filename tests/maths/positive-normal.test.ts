import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { positiveCdf, positivePart, positiveQuantile } from '../../source/maths/positive-normal.ts';
import { truncatedNormal } from '../../source/maths/truncated-normal.ts';

const depths = fc.double({ min: -30, max: 300, noNaN: true });
const sds = fc.double({ min: 1e-6, max: 1e3, noNaN: true });

describe('what is left above zero of a normal is the truncated normal, from all of it left to next to nothing', () => {
  it('in mean and variance', () => {
    fc.assert(
      fc.property(depths, sds, (depth, sd) => {
        const known = truncatedNormal({ mean: -depth * sd, sd, low: 0, high: Number.POSITIVE_INFINITY });
        const { mean, variance } = positivePart(-depth * sd, sd);
        expect(Math.abs(mean / known.mean - 1)).toBeLessThan(1e-6);
        expect(Math.abs(variance / known.variance - 1)).toBeLessThan(1e-5);
      }),
    );
  });

  it('in cdf and quantile', () => {
    fc.assert(
      fc.property(depths, sds, fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), (depth, sd, p) => {
        const known = truncatedNormal({ mean: -depth * sd, sd, low: 0, high: Number.POSITIVE_INFINITY });
        const x = positiveQuantile(-depth * sd, sd, p);
        expect(Math.abs(known.cdf(x) - p)).toBeLessThan(1e-6);
        expect(Math.abs(positiveCdf(-depth * sd, sd, x) - p)).toBeLessThan(1e-6);
      }),
    );
  });

  it('and never below zero', () => {
    expect(positiveQuantile(-1, 1, 0)).toBe(0);
    expect(positiveCdf(-1, 1, -0.5)).toBe(0);
  });
});
