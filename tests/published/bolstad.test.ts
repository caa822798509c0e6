// W. M. Bolstad, "Introduction to Bayesian Statistics", and its R package (github.com/cran/Bolstad): a Poisson rate with a gamma prior
// (example poisgamp), and a line with known error sd and normal priors (example 14.1); the two-regressor cases are derived in exact arithmetic.
import { test } from 'vitest';
import { gammaQuantile } from '../../source/maths/gamma-quantile.ts';
import { type Fit, leastSquares } from '../../source/maths/least-squares.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

const digits = { relative: 1e-9 };

test('4 events and a prior gamma(1, 1) leave the rate between 0.81 and 5.12, 95 chances in 100', () => {
  expectNear(gammaQuantile(0.025, 5) / 2, 0.8117431950592102, digits);
  expectNear(gammaQuantile(0.975, 5) / 2, 5.120794337701849, digits);
});

interface Counts {
  readonly counts: readonly number[];
  readonly priorShape: number;
  readonly priorRate: number;
}

testPublished<Cases<Counts, { ci95: readonly [number, number] }>>(
  'all rates',
  'statistics/bolstad-poisson-gamma.json',
  ({ cases }) => {
    for (const { input, expected } of cases) {
      const shape = input.priorShape + input.counts.reduce((sum, count) => sum + count, 0);
      const rate = input.priorRate + input.counts.length;
      expectNear(gammaQuantile(0.025, shape) / rate, expected.ci95[0], digits);
      expectNear(gammaQuantile(0.975, shape) / rate, expected.ci95[1], digits);
    }
  },
);

interface Line {
  readonly X?: readonly (readonly number[])[];
  readonly x?: readonly number[];
  readonly y: readonly number[];
  readonly sigma: number;
  readonly priorMean: readonly number[];
  /** null: nothing known beforehand. */
  readonly priorSd: readonly (number | null)[];
}

interface Posterior {
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** Each row over its error sd, then each prior as one more row: the posterior is the least squares fit. */
function posterior({ X, x, y, sigma, priorMean, priorSd }: Line): Fit {
  const middle = x ? x.reduce((sum, value) => sum + value, 0) / x.length : 0;
  const rows = X ?? x!.map((value) => [1, value - middle]);
  const known = priorSd.flatMap((sd, j) => (sd === null ? [] : [{ j, sd }]));
  const columns = priorMean.map((_, j) =>
    Float64Array.from([
      ...rows.map((row) => row[j]! / sigma),
      ...known.map((prior) => (prior.j === j ? 1 / prior.sd : 0)),
    ]),
  );
  return leastSquares(
    columns,
    Float64Array.from([...y.map((value) => value / sigma), ...known.map(({ j, sd }) => priorMean[j]! / sd)]),
  );
}

function check(line: Line, expected: Posterior): void {
  const { estimates, covariance } = posterior(line);
  for (const [i, mean] of expected.mean.entries()) {
    expectNear(estimates[i]!, mean, digits);
    for (const [j, value] of expected.covariance[i]!.entries())
      expectNear(covariance[i]![j]!, value, { ...digits, absolute: 1e-15 });
  }
}

test('example 14.1, oxygen uptake on heart rate: slope 0.0427 with sd 0.0034', () => {
  check(
    {
      x: [94, 96, 94, 95, 104, 106, 108, 113, 115, 121, 131],
      y: [0.47, 0.75, 0.83, 0.98, 1.18, 1.29, 1.4, 1.6, 1.75, 1.9, 2.23],
      sigma: 0.13,
      priorMean: [0, 0],
      priorSd: [null, 1],
    },
    {
      mean: [1.3072727272727274, 0.0426509281287447],
      covariance: [
        [0.0015363636363636363, 0],
        [0, 1.137268358118942e-5],
      ],
    },
  );
});

testPublished<Cases<Line, Posterior>>(
  'all lines and pairs',
  'statistics/bayes-linear-known-variance.json',
  ({ cases }) => {
    for (const { input, expected } of cases) check(input, expected);
  },
);
