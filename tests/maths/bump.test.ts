import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bump, type LogConcave } from '../../source/maths/bump.ts';
import { truncatedNormal } from '../../source/maths/truncated-normal.ts';

function normal(mean: number, sd: number): LogConcave {
  return {
    log: (x) => -0.5 * ((x - mean) / sd) ** 2,
    slope: (x) => -(x - mean) / (sd * sd),
    curvature: () => -1 / (sd * sd),
  };
}

const means = fc.double({ min: -20, max: 20, noNaN: true });
const sds = fc.double({ min: 0.01, max: 100, noNaN: true });

describe('a log-concave density on the numbers from 0 up', () => {
  it('has the mass, mean and variance of the truncated normal where it is one', () => {
    fc.assert(
      fc.property(means, sds, (ratio, sd) => {
        const mean = ratio * sd;
        const { places, weights, logMass } = bump(normal(mean, sd), 64);
        const known = truncatedNormal({ mean, sd, low: 0, high: Number.POSITIVE_INFINITY });
        const own = weights.reduce((sum, weight, i) => sum + weight * places[i]!, 0);
        const variance = weights.reduce((sum, weight, i) => sum + weight * (places[i]! - own) ** 2, 0);
        expect(Math.abs(own - known.mean) / Math.sqrt(known.variance)).toBeLessThan(1e-4);
        expect(Math.abs(variance / known.variance - 1)).toBeLessThan(1e-4);
        expect(logMass - Math.log(sd) - 0.5 * Math.log(2 * Math.PI)).toBeCloseTo(known.logMass, 4);
      }),
    );
  });

  it('has its cdf and its quantile, the one undoing the other', () => {
    fc.assert(
      fc.property(means, sds, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (ratio, sd, p) => {
        const mean = ratio * sd;
        const { cdf, quantile } = bump(normal(mean, sd), 64);
        const known = truncatedNormal({ mean, sd, low: 0, high: Number.POSITIVE_INFINITY });
        expect(Math.abs(cdf(known.quantile(p)) - p)).toBeLessThan(3e-4);
        expect(Math.abs(known.cdf(quantile(p)) - p)).toBeLessThan(3e-4);
      }),
    );
  });

  it('finds a narrow edge far from 0: two losses that go hand in hand', () => {
    const edge = 1e-3;
    const density: LogConcave = {
      log: (x) => -0.5 * (x / 1000) ** 2 - Math.log1p(Math.exp((x - 1) / edge)),
      slope: (x) => -x / 1e6 - 1 / (1 + Math.exp(-(x - 1) / edge)) / edge,
      curvature: (x) => -1e-6 - 1 / (2 + Math.exp((x - 1) / edge) + Math.exp(-(x - 1) / edge)) / edge ** 2,
    };
    const { places, weights, cdf } = bump(density, 64);
    expect(weights.reduce((sum, weight, i) => sum + weight * places[i]!, 0)).toBeCloseTo(0.5, 2);
    expect(cdf(0.25)).toBeCloseTo(0.25, 2);
  });
});
