import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastSquares, residualSd, standardErrors } from '../../source/maths/least-squares.ts';
import { stream } from '../../source/maths/stream.ts';
import { expectNear } from '../helpers/published.ts';

const value = fc.double({ min: -100, max: 100, noNaN: true });
const rows = fc.array(fc.tuple(value, value, value), { minLength: 4, maxLength: 30 });

function fitOf(data: readonly (readonly [number, number, number])[]) {
  const ones = new Float64Array(data.length).fill(1);
  const columns = [ones, Float64Array.from(data, (row) => row[0]), Float64Array.from(data, (row) => row[1])];
  const target = Float64Array.from(data, (row) => row[2]);
  return { columns, target, ...leastSquares(columns, target) };
}

test('what is left stands square on every column', () => {
  fc.assert(
    fc.property(rows, (data) => {
      const { columns, target, estimates, residualSumOfSquares } = fitOf([
        ...data,
        [100, 0, 1],
        [0, 100, 1],
        [-100, -100, 1],
      ]);
      const left = target.map(
        (wanted, i) => wanted - columns.reduce((sum, column, j) => sum + estimates[j]! * column[i]!, 0),
      );
      for (const column of columns) {
        expectNear(
          column.reduce((sum, x, i) => sum + x * left[i]!, 0),
          0,
          { absolute: 1e-8 },
        );
      }
      expectNear(
        left.reduce((sum, x) => sum + x * x, 0),
        residualSumOfSquares,
        { relative: 1e-9, absolute: 1e-9 },
      );
    }),
  );
});

test('other units change the figures by just those units', () => {
  const x = Float64Array.of(1, 2, 3, 5, 8);
  const y = Float64Array.of(2, 3, 5, 4, 9);
  const one = leastSquares([x], y);
  const other = leastSquares([x.map((value) => value * 1e9)], y);
  expectNear(other.estimates[0]! * 1e9, one.estimates[0]!, { relative: 1e-14 });
  expectNear(other.covariance[0]![0]! * 1e18, one.covariance[0]![0]!, { relative: 1e-14 });
  expectNear(other.logDeterminant - one.logDeterminant, Math.log(1e9), { relative: 1e-14 });
});

test('standard errors hold: the truth lies within one of them two times in three', () => {
  const draws = stream(1, 'fits');
  const x = Float64Array.from({ length: 40 }, (_, i) => i);
  const ones = x.map(() => 1);
  let within = 0;
  for (let run = 0; run < 2000; run += 1) {
    const fit = leastSquares(
      [ones, x],
      x.map((value) => 3 + 0.25 * value + 2 * draws.normal()),
    );
    if (Math.abs(fit.estimates[1]! - 0.25) < standardErrors(fit, residualSd(fit))[1]!) within += 1;
  }
  // Student t with 38 degrees of freedom: 0.6763 within one; five standard errors of 2000 trials are 0.052.
  expectNear(within / 2000, 0.6763, { absolute: 0.052 });
});

test('the log determinant is that of the triangular factor', () => {
  const fit = leastSquares([Float64Array.of(3, 4, 0), Float64Array.of(0, 0, 2)], Float64Array.of(1, 1, 1));
  expectNear(fit.logDeterminant, Math.log(5 * 2), { relative: 1e-14 });
});

test('as many rows as columns leave nothing over', () => {
  const fit = leastSquares([Float64Array.of(1, 0), Float64Array.of(0, 2)], Float64Array.of(3, 8));
  expect([...fit.estimates]).toEqual([expect.closeTo(3, 12), expect.closeTo(4, 12)]);
  expect([fit.degreesOfFreedom, fit.residualSumOfSquares]).toEqual([0, 0]);
});

test('the columns and the target are left as they were', () => {
  const [column, target] = [Float64Array.of(1, 2, 3), Float64Array.of(4, 5, 6)];
  leastSquares([column], target);
  expect([...column, ...target]).toEqual([1, 2, 3, 4, 5, 6]);
});

test('a column of nothing, or more columns than rows, is a fault', () => {
  expect(() => leastSquares([Float64Array.of(0, 0)], Float64Array.of(1, 2))).toThrow('hang together');
  expect(() => leastSquares([Float64Array.of(1), Float64Array.of(2)], Float64Array.of(1))).toThrow(
    'do not fit',
  );
});
