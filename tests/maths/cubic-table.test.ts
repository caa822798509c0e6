import { test } from 'vitest';
import { type CubicTable, readTable } from '../../source/maths/cubic-table.ts';
import { expectNear } from '../helpers/published.ts';

function tableOf(
  f: (x: number) => number,
  slope: (x: number) => number,
  first: number,
  step: number,
  points: number,
): CubicTable {
  const places = Float64Array.from({ length: points }, (_, i) => (first + i) * step);
  return { first, step, values: places.map(f), slopes: places.map(slope) };
}

test('a cubic is read exactly, between the points and past the ends', () => {
  const cubic = (x: number) => 2 - x + 0.5 * x ** 2 - 3 * x ** 3;
  const table = tableOf(cubic, (x) => -1 + x - 9 * x ** 2, -2, 0.5, 6);
  for (const x of [-1.4, -1, -0.8, 0.1, 0.5, 1.49, 1.5, 1.9])
    expectNear(readTable(table, x), cubic(x), { absolute: 1e-12 });
});

test('the error falls with the fourth power of the step: half the step, a sixteenth of the error', () => {
  const error = (step: number) => {
    const table = tableOf(Math.sin, Math.cos, 0, step, Math.round(2 / step) + 1);
    let worst = 0;
    for (let x = 0; x < 2; x += 0.001) worst = Math.max(worst, Math.abs(readTable(table, x) - Math.sin(x)));
    return worst;
  };
  expectNear(error(0.25) / error(0.125), 16, { relative: 0.1 });
  expectNear(error(0.125), 0.125 ** 4 / 384, { relative: 0.1 });
});
