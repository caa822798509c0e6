// Exact tests of two Poisson rates: given their sum, the first count is binomial, whose tails are the incomplete beta function that counts
// at an uncertain rate stand on. R 4.2.2 poisson.test (example eba1977); M. P. Fay, vignette of R package rateratio.test (2022);
// Gu, Ng, Tang and Schucany (2008) as quoted in statsmodels 0.13.5.
import { test } from 'vitest';
import { regularisedBeta } from '../../source/maths/incomplete-beta.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

interface Input {
  readonly x1: number;
  readonly t1: number;
  readonly x2: number;
  readonly t2: number;
  readonly nullRatio?: number;
}

interface Expected {
  readonly pGreater: number;
  readonly pLess: number;
}

function check(
  { x1, t1, x2, t2, nullRatio = 1 }: Input,
  { pGreater, pLess }: Expected,
  relative: number,
): void {
  const whole = t1 * nullRatio + t2;
  const [first, second] = [(t1 * nullRatio) / whole, t2 / whole];
  expectNear(x1 === 0 ? 1 : regularisedBeta(first, second, x1, x2 + 1), pGreater, { relative });
  expectNear(x2 === 0 ? 1 : regularisedBeta(second, first, x2, x1 + 1), pLess, { relative });
}

test('the published examples', () => {
  check(
    { x1: 11, t1: 800, x2: 21, t2: 3011 },
    { pGreater: 0.05600865978769966, pLess: 0.9759318232273121 },
    1e-10,
  );
  check(
    { x1: 2, t1: 17_877, x2: 9, t2: 16_660 },
    { pGreater: 0.9957866808045336, pLess: 0.02505324780705445 },
    1e-10,
  );
  check(
    { x1: 60, t1: 51_477.5, x2: 30, t2: 54_308.7 },
    { pGreater: 0.000428052694050124, pLess: 0.9998077878100844 },
    1e-10,
  );
});

testPublished<Cases<Input, Expected>>(
  'all published',
  'statistics/poisson-rate-ratio-published.json',
  ({ cases }) => {
    for (const { input, expected } of cases) check(input, expected, 1e-10);
  },
);

testPublished<Cases<Input, Expected>>(
  '25 random pairs',
  'statistics/r-poisson-rate-ratio-random.json',
  ({ cases }) => {
    for (const { input, expected } of cases) check(input, expected, 1e-9);
  },
);
