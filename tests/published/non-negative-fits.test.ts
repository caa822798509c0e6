// Least squares of two coefficients that may not be below nothing: scipy.optimize.nnls documentation (first case), and cases on which R's package nnls (Lawson and Hanson) and exact
// rational solutions agree.
//
// The program has no such fit of its own: it wants the whole of what may be, not the one best value. But the best value is where its answer goes as the errors go to nothing and the prior says
// nothing, and there the trap of the published cases shows just as well: clipping one coefficient of a free fit at zero, and not fitting the other anew, is wrong. So they are held against the fit and
// the truncated posterior that split a fluid's loss, with errors of a thousandth of the largest reading and less.
import { expect, test } from 'vitest';
import { fitRows } from '../../source/inference/joint.ts';
import { posteriorOf } from '../../source/inference/posterior.ts';
import { leastSquares } from '../../source/maths/least-squares.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

interface Input {
  readonly A: readonly (readonly number[])[];
  readonly b: readonly number[];
}

/** Means of the two coefficients, each above zero, where readings stray by `sd` and the prior says nothing. */
function means({ A, b }: Input, sd: number): [number, number] {
  const columns = [0, 1].map((j) => Float64Array.from(A, (row) => row[j]! / sd));
  const rows = {
    columns,
    target: Float64Array.from(b, (value) => value / sd),
    logScale: 0,
    end: { target: 0, coefficients: new Float64Array(2), variance: 1 },
  };
  const vague = 1e4;
  const anything = { chance: 1, mean: 0, sd: vague / 10 };
  const never = { ...anything, chance: 0 };
  const twoParts = { usual: anything, leak: never };
  const { joint } = fitRows(rows, [], vague, true);
  const { run, rest } = posteriorOf(joint, { run: twoParts, rest: twoParts }, vague, 'fine');
  return [run, rest];
}

function check(input: Input, { x }: { readonly x: readonly number[] }): void {
  const largest = Math.max(...input.b.map(Math.abs));
  const columnSize = [0, 1].map((j) => Math.max(...input.A.map((row) => Math.abs(row[j]!))));
  let apart = Number.POSITIVE_INFINITY;
  for (const part of [1e-3, 1e-4, 1e-5]) {
    const told = means(input, part * largest);
    const next = Math.max(...x.map((value, j) => (Math.abs(told[j]! - value) * columnSize[j]!) / largest));
    expect(next).toBeLessThan(Math.max(apart, 1e-9));
    apart = next;
  }
  expect(apart).toBeLessThan(1e-6);
}

const documented: Input = {
  A: [
    [1, 0],
    [1, 0],
    [0, 1],
  ],
  b: [2, 1, 1],
};
/** Hours and days, and what was lost: a free fit makes the first coefficient negative. */
const clipped: Input = {
  A: [
    [71.2, 65.7],
    [5.75, 114],
    [111, 140],
    [51.2, 46.3],
    [23.2, 298],
    [34.6, 108],
    [89, 152],
    [26.6, 377],
    [73.6, 139],
  ],
  b: [0.25957, 0.40767, 0.57879, 0.084159, 1.2042, 0.43322, 0.56113, 1.5085, 0.49505],
};

test('two coefficients that are both above nothing are 1.5 and 1, as documented', () => {
  check(documented, { x: [1.5, 1] });
});

test('where one is held at nothing the other is fitted anew: 0 and 0.0039401, not what a clipped fit leaves', () => {
  check(clipped, { x: [0, 0.003940107478695418] });
  const columns = [0, 1].map((j) => Float64Array.from(clipped.A, (row) => row[j]!));
  const free = leastSquares(columns, Float64Array.from(clipped.b)).estimates;
  expect(free[0]).toBeLessThan(0);
  expect(Math.abs(free[1]! / 0.003940107478695418 - 1)).toBeGreaterThan(0.01);
});

testPublished<Cases<Input, { x: readonly number[]; residualNorm: number }>>(
  'all sixteen',
  'statistics/nnls-two-regressors.json',
  ({ cases }) => {
    expect(cases).toHaveLength(16);
    for (const { input, expected } of cases) {
      check(input, expected);
      const [run, rest] = means(input, 1e-5);
      const left = input.b.map((value, i) => value - run * input.A[i]![0]! - rest * input.A[i]![1]!);
      expectNear(Math.hypot(...left), expected.residualNorm, { relative: 1e-6, absolute: 1e-9 });
    }
  },
);
