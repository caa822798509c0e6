// R 4.2.2, package stats: pgamma and qgamma (rate parametrisation), every value recomputed to 60 digits with mpmath.
import { test } from 'vitest';
import { gammaCdf, gammaUpperTail } from '../../source/maths/gamma.ts';
import { gammaQuantile } from '../../source/maths/gamma-quantile.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

test("chances below and above are R's", () => {
  for (const [x, shape, rate, lower, upper] of [
    [3.35742, 0.7181, 0.1507, 0.5501612471173981, 0.44983875288260183],
    [6.1551e-6, 0.2505, 2854, 0.39948396895735533, 0.6005160310426446],
    [50.8815, 2176, 41.5, 0.08262215999610545, 0.9173778400038946],
  ] as const) {
    expectNear(gammaCdf(x * rate, shape), lower, { relative: 1e-12 });
    expectNear(gammaUpperTail(x * rate, shape), upper, { relative: 1e-12 });
  }
});

test("quantiles are R's, for small shapes too", () => {
  for (const [p, shape, rate, q] of [
    [0.2, 0.7181, 0.1507, 0.6572280201958624],
    [0.1, 0.05892, 0.6965, 9.009410021489984e-18],
    [0.05, 0.5944, 818.1, 6.562547982254344e-6],
  ] as const) {
    expectNear(gammaQuantile(p, shape) / rate, q, { relative: 1e-12 });
  }
});

type Tails = Cases<{ x: number; shape: number; rate: number }, { lower: number; upper: number }>;

testPublished<Tails>('pgamma, both tails', 'statistics/r-pgamma.json', ({ cases }) => {
  for (const { input, expected } of cases) {
    expectNear(gammaCdf(input.x * input.rate, input.shape), expected.lower, { relative: 1e-12 });
    expectNear(gammaUpperTail(input.x * input.rate, input.shape), expected.upper, { relative: 1e-12 });
  }
});

type Quantiles = Cases<{ p: number; shape: number; rate: number }, { q: number }>;

testPublished<Quantiles>('qgamma, shapes from 0.06 to 4000', 'statistics/r-qgamma.json', ({ cases }) => {
  for (const { input, expected } of cases) {
    expectNear(gammaQuantile(input.p, input.shape) / input.rate, expected.q, {
      relative: 1e-10,
      absolute: 1e-300,
    });
  }
});
