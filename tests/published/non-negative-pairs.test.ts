// scipy.optimize.nnls documentation (scipy 1.10.1), R package nnls (Lawson and Hanson), and exact rational solutions.
import { test } from 'vitest';
import { nonNegativePair } from '../../source/maths/non-negative-pair.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

interface Input {
  readonly A: readonly (readonly [number, number])[];
  readonly b: readonly number[];
}

interface Expected {
  readonly x: readonly [number, number];
  readonly residualNorm: number;
}

function check({ A, b }: Input, { x, residualNorm }: Expected): void {
  const column = (j: 0 | 1) => Float64Array.from(A, (row) => row[j]);
  const fit = nonNegativePair(column(0), column(1), Float64Array.from(b));
  expectNear(fit.first, x[0], { absolute: 1e-10 });
  expectNear(fit.second, x[1], { absolute: 1e-10 });
  expectNear(fit.residual, residualNorm, { absolute: 1e-10 });
}

test("scipy's own example", () => {
  check(
    {
      A: [
        [1, 0],
        [1, 0],
        [0, 1],
      ],
      b: [2, 1, 1],
    },
    { x: [1.5, 1], residualNorm: Math.SQRT1_2 },
  );
});

test('where one is held at zero the other is fitted anew', () => {
  check(
    {
      A: [
        [113, 173],
        [99.7, 145],
        [29.3, 331],
        [15.5, 112],
        [59.1, 259],
        [10.8, 202],
        [117, 195],
        [95.1, 373],
        [42.3, 295],
        [75.3, 240],
        [87, 370],
        [43.6, 342],
        [26.6, 174],
      ],
      b: [
        0.66241, 0.57439, 1.2778, 0.48567, 1.0304, 0.8048, 0.79166, 1.4352, 1.2227, 0.93108, 1.5048, 1.33,
        0.67893,
      ],
    },
    { x: [0, 0.003955856022858096], residualNorm: 0.10557539629973788 },
  );
});

testPublished<Cases<Input, Expected>>('all pairs', 'statistics/nnls-two-regressors.json', ({ cases }) => {
  for (const { input, expected } of cases) check(input, expected);
});
