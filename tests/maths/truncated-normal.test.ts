import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalCdf } from '../../source/maths/normal.ts';
import { truncatedNormal } from '../../source/maths/truncated-normal.ts';
import { expectNear } from '../helpers/published.ts';

const bounds = fc
  .record({
    mean: fc.double({ min: -50, max: 50, noNaN: true }),
    sd: fc.double({ min: 0.01, max: 20, noNaN: true }),
    low: fc.double({ min: -50, max: 50, noNaN: true }),
    width: fc.oneof(fc.double({ min: 0.01, max: 100, noNaN: true }), fc.constant(Number.POSITIVE_INFINITY)),
  })
  .map(({ width, ...rest }) => ({ ...rest, high: rest.low + width }));

test('the cdf of a quantile is the chance asked for, wherever the bounds lie', () => {
  fc.assert(
    fc.property(bounds, fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), (between, p) => {
      const { cdf, quantile } = truncatedNormal(between);
      const x = quantile(p);
      expect(x).toBeGreaterThanOrEqual(between.low);
      expect(x).toBeLessThanOrEqual(between.high);
      const rounding =
        (Math.abs(x) + Math.abs(between.mean)) * 2 ** -52 * truncatedNormal(between).density(x);
      expectNear(cdf(x), p, { absolute: 1e-10 + 4 * rounding });
    }),
    { numRuns: 1000 },
  );
});

test('mean and variance are those of its draws at even chances', () => {
  fc.assert(
    fc.property(bounds, (between) => {
      const { mean, variance, quantile } = truncatedNormal(between);
      const draws = Array.from({ length: 4000 }, (_, i) => quantile((i + 0.5) / 4000));
      const drawnMean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
      const drawnVariance = draws.reduce((sum, draw) => sum + (draw - drawnMean) ** 2, 0) / draws.length;
      const sd = Math.sqrt(variance);
      expectNear(drawnMean, mean, { absolute: 0.002 * sd });
      expectNear(Math.sqrt(drawnVariance), sd, { relative: 0.005 });
    }),
    { numRuns: 50 },
  );
});

test('turned round, everything is turned round', () => {
  const one = truncatedNormal({ mean: 1, sd: 2, low: 3, high: 7 });
  const other = truncatedNormal({ mean: -1, sd: 2, low: -7, high: -3 });
  expectNear(other.mean, -one.mean, { relative: 1e-14 });
  expectNear(other.variance, one.variance, { relative: 1e-13 });
  expectNear(other.logMass, one.logMass, { relative: 1e-14 });
  for (const p of [1e-6, 0.1, 0.5, 0.9])
    expectNear(other.quantile(1 - p), -one.quantile(p), { relative: 1e-9 });
});

test('a thousand sds out it is an exponential, not NaN', () => {
  const { mean, variance, quantile, cdf, logMass } = truncatedNormal({
    mean: -1000,
    sd: 1,
    low: 0,
    high: Infinity,
  });
  expectNear(mean, 1e-3, { relative: 1e-5 });
  expectNear(variance, 1e-6, { relative: 1e-5 });
  expectNear(quantile(0.5), Math.LN2 / 1000, { relative: 1e-5 });
  expectNear(cdf(0.001), 1 - Math.exp(-1), { relative: 1e-5 });
  expectNear(logMass, -500_000 - Math.log(1000) - 0.5 * Math.log(2 * Math.PI), { absolute: 2e-6 });
});

test('between narrow bounds it is even', () => {
  const { mean, variance, quantile } = truncatedNormal({ mean: 0, sd: 1, low: 2, high: 2 + 1e-9 });
  expectNear(mean - 2, 0.5e-9, { relative: 1e-6 });
  expectNear(variance, 1e-18 / 12, { relative: 1e-6 });
  expectNear(quantile(0.25) - 2, 0.25e-9, { relative: 1e-6 });
});

test('with bounds far away it is the whole normal', () => {
  const { mean, variance, quantile, density, cdf, logMass } = truncatedNormal({
    mean: 5,
    sd: 0.1,
    low: 0,
    high: Infinity,
  });
  expectNear(mean, 5, { relative: 1e-15 });
  expectNear(variance, 0.01, { relative: 1e-13 });
  expectNear(quantile(normalCdf(1)), 5.1, { relative: 1e-14 });
  expectNear(density(5), 10 / Math.sqrt(2 * Math.PI), { relative: 1e-13 });
  expectNear(cdf(4.8), normalCdf(-2), { relative: 1e-12 });
  expectNear(logMass, 0, { absolute: 1e-14 });
  expect(density(-1)).toBe(0);
});

test('bounds the wrong way round, or no spread, are a fault', () => {
  expect(() => truncatedNormal({ mean: 0, sd: 1, low: 1, high: 1 })).toThrow('truncated to nothing');
  expect(() => truncatedNormal({ mean: 0, sd: 0, low: 0, high: 1 })).toThrow('truncated to nothing');
});
