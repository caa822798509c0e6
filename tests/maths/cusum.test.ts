import { expect, test } from 'vitest';
import { cusum } from '../../source/maths/cusum.ts';
import { stream } from '../../source/maths/stream.ts';
import { expectNear } from '../helpers/published.ts';

const chart = { slack: 0.5, limit: 5 };

/** Mean number of values until a signal, over seeded runs of normals about `shift`, each cut off at `longest`. */
function runLength(shift: number, runs: number, longest: number): number {
  const draws = stream(1, `cusum ${shift}`);
  let total = 0;
  for (let run = 0; run < runs; run += 1) {
    const values = Array.from({ length: longest }, () => shift + draws.normal());
    const at = cusum(values, chart).findIndex(({ signal }) => signal !== null);
    total += at < 0 ? longest : at + 1;
  }
  return total / runs;
}

test('with k = 0.5 and h = 5 false alarms come some 465 apart, and a shift of 1 sd is seen in about 10', () => {
  // Average run lengths 465 and 10.4 (Montgomery's table for h = 5, from memory). Run lengths without a shift are near exponential: sd near the mean;
  // cutting them off at 3000 takes less than 0.2 % off the mean.
  expectNear(runLength(0, 400, 3000), 465, { relative: 4 / Math.sqrt(400) });
  expectNear(runLength(1, 2000, 100), 10.4, { relative: 0.05 });
});

test('a fall is seen as a rise is, and dated by the start of its run', () => {
  const steps = cusum([0, 0.4, -0.2, -3, -3, -3], chart);
  expect(steps.map(({ signal }) => signal)).toEqual([
    null,
    null,
    null,
    null,
    null,
    { way: 'down', since: 3 },
  ]);
  expect(steps[5]!.low).toBeCloseTo(7.5, 12);
});

test('at the limit is not past it; nothing seen, nothing signalled', () => {
  expect(cusum([5.5], chart)[0]).toEqual({ high: 5, low: 0, signal: null });
  expect(cusum([], chart)).toEqual([]);
});
