// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3 "CUSUM control charts", tabular form:
// www.itl.nist.gov/div898/handbook/pmc/section3/pmc323.htm
import { expect, test } from 'vitest';
import { cusum } from '../../source/maths/cusum.ts';
import { expectNear, testPublished } from '../helpers/published.ts';

const target = 325;
const chart = { slack: 0.3175, limit: 4.1959 };
const values = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
  328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];

test("the handbook's table to its printed digits, and its signal at observation 14, of a run that began at 13", () => {
  const steps = cusum(
    values.map((value) => value - target),
    chart,
  );
  const printed = { absolute: 0.005 + 1e-9 };
  for (const [i, high] of [3.01, 4.94, 7.45, 10.63].entries()) expectNear(steps[12 + i]!.high, high, printed);
  for (const [i, low] of [0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25].entries())
    expectNear(steps[2 + i]!.low, low, printed);
  expect(steps.findIndex(({ signal }) => signal !== null)).toBe(13);
  expect(steps[13]!.signal).toEqual({ way: 'up', since: 12 });
});

interface Chart {
  readonly input: {
    readonly values: readonly number[];
    readonly target: number;
    readonly k: number;
    readonly h: number;
  };
  readonly expected: {
    readonly exact: readonly { high: number; low: number }[];
    readonly signals: readonly number[];
  };
}

testPublished<Chart>('the whole chart', 'statistics/nist-6.3.2.3-cusum.json', ({ input, expected }) => {
  const steps = cusum(
    input.values.map((value) => value - input.target),
    { slack: input.k, limit: input.h },
  );
  expect(steps.map(({ high, low }) => ({ high, low }))).toEqual(
    expected.exact.map(({ high, low }) => ({ high: expect.closeTo(high, 9), low: expect.closeTo(low, 9) })),
  );
  expect(steps.flatMap(({ signal }, i) => (signal ? [i + 1] : []))).toEqual(expected.signals);
});
