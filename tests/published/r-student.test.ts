// R 4.2.2, package stats: pt, every value recomputed to 60 digits with mpmath. The chart over a check's answers rests on it.
import { test } from 'vitest';
import { studentTail } from '../../source/maths/student-deviate.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

interface Input {
  readonly x: number;
  readonly df: number;
}

interface Expected {
  readonly lower: number;
  readonly upper: number;
}

const digits = { relative: 1e-11, absolute: 1e-300 };

function check({ x, df }: Input, { lower, upper }: Expected): void {
  expectNear(studentTail(Math.abs(x), df), x < 0 ? lower : upper, digits);
}

test('one of them by hand', () => {
  check({ x: 0.26181, df: 7 }, { lower: 0.5994976906190876, upper: 0.4005023093809124 });
});

testPublished<Cases<Input, Expected>>('the whole table', 'statistics/r-pt.json', ({ cases }) => {
  for (const { input, expected } of cases) if (input.x !== 0) check(input, expected);
});
