// R 4.2.2, package stats: pbeta, every value recomputed to 60 digits with mpmath. Demand at an uncertain rate rests on it.
import { test } from 'vitest';
import { regularisedBeta } from '../../source/maths/incomplete-beta.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

interface Input {
  readonly x: number;
  readonly a: number;
  readonly b: number;
}

interface Expected {
  readonly lower: number;
  readonly upper: number;
}

const digits = { relative: 1e-11, absolute: 1e-300 };

function check({ x, a, b }: Input, { lower, upper }: Expected): void {
  expectNear(regularisedBeta(x, 1 - x, a, b), lower, digits);
  expectNear(regularisedBeta(1 - x, x, b, a), upper, digits);
}

test('two of them by hand', () => {
  check({ x: 0.25782, a: 0.3182, b: 1.307 }, { lower: 0.7114419027925614, upper: 0.28855809720743864 });
  check({ x: 0.9935, a: 15.64, b: 0.5545 }, { lower: 0.6963011491024801, upper: 0.30369885089751986 });
});

testPublished<Cases<Input, Expected>>('the whole table', 'statistics/r-pbeta.json', ({ cases }) => {
  for (const { input, expected } of cases) check(input, expected);
});
