// R 4.2.2, package stats: pnorm and qnorm, every value recomputed to 60 digits with mpmath.
import { test } from 'vitest';
import { logNormalCdf, normalCdf, normalUpperTail } from '../../source/maths/normal.ts';
import { normalQuantile } from '../../source/maths/normal-quantile.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

const digits = { relative: 1e-12 };

test("chances below and above a deviate are R's, far out in the tail too", () => {
  for (const [x, lower, upper, logLower] of [
    [0.0183242, 0.5073098890509861, 0.4926901109490139, -0.6786332411025713],
    [0.590545, 0.722587337062185, 0.2774126629378149, -0.32491698455419055],
    [-27.3052, 1.839749197982038e-164, 1, -377.01432599413755],
  ] as const) {
    expectNear(normalCdf(x), lower, digits);
    expectNear(normalUpperTail(x), upper, digits);
    expectNear(logNormalCdf(x), logLower, digits);
  }
});

test("deviates of a chance are R's", () => {
  for (const [p, q] of [
    [0.0001, -3.7190164854556804],
    [0.55019, 0.12614139586008788],
    [0.995, 2.5758293035489004],
  ] as const) {
    expectNear(normalQuantile(p), q, digits);
  }
});

type Tail = Cases<{ x: number }, { lower: number; upper: number; log_lower: number }>;

testPublished<Tail>('pnorm: lower, upper, log', 'statistics/r-pnorm.json', ({ cases }) => {
  for (const { input, expected } of cases) {
    expectNear(normalCdf(input.x), expected.lower, digits);
    expectNear(normalUpperTail(input.x), expected.upper, digits);
    expectNear(logNormalCdf(input.x), expected.log_lower, digits);
  }
});

testPublished<Cases<{ p: number }, { q: number }>>(
  'qnorm, down to 1e-15',
  'statistics/r-qnorm.json',
  ({ cases }) => {
    for (const { input, expected } of cases) {
      expectNear(normalQuantile(input.p), expected.q, { relative: 1e-11, absolute: 1e-300 });
    }
  },
);
