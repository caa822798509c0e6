// R 4.2.2, package stats: ppois, dpois, qpois, and pnbinom, qnbinom with size = shape and prob = rate / (rate + exposure);
// every value recomputed to 60 digits with mpmath.
import { expect, test } from 'vitest';
import { gammaCdf, gammaUpperTail } from '../../source/maths/gamma.ts';
import {
  eventsAtMost,
  eventsMoreThan,
  eventsStock,
  type GammaPoisson,
} from '../../source/maths/negative-binomial.ts';
import { coverStock } from '../../source/readiness/spares.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

test("Poisson chances are R's", () => {
  for (const [k, mean, lower, upper] of [
    [56, 42.87, 0.9776879680570525, 0.022312031942947463],
    [1, 1.093, 0.7015931814549728, 0.29840681854502715],
  ] as const) {
    expectNear(gammaUpperTail(mean, k + 1), lower, { relative: 1e-12 });
    expectNear(gammaCdf(mean, k + 1), upper, { relative: 1e-12 });
  }
});

test("chances of a count at an uncertain rate are R's", () => {
  for (const [k, demand, lower, upper] of [
    [0, { shape: 0.5, rate: 525.3, exposure: 4.075 }, 0.9961436860269376, 0.0038563139730623582],
    [41, { shape: 4, rate: 72.55, exposure: 669.7 }, 0.6528637190067615, 0.34713628099323846],
  ] as const) {
    expectNear(eventsAtMost(k, demand), lower, { relative: 1e-11 });
    expectNear(eventsMoreThan(k, demand), upper, { relative: 1e-11 });
  }
});

test("stocks for a chance are R's", () => {
  expect(coverStock(Float64Array.of(18.9), 0.99)).toBe(30);
  expect(coverStock(Float64Array.of(21.06), 0.2)).toBe(17);
  expect(eventsStock(0.995, { shape: 4, rate: 72.55, exposure: 669.7 })).toBe(105);
  expect(eventsStock(0.8, { shape: 0.5, rate: 525.3, exposure: 4.075 })).toBe(0);
});

type Poisson = Cases<{ k: number; lambda: number }, { lower: number; upper: number; pmf: number }>;

testPublished<Poisson>('ppois, as the tails of the gamma', 'statistics/r-ppois.json', ({ cases }) => {
  for (const { input, expected } of cases) {
    expectNear(gammaUpperTail(input.lambda, input.k + 1), expected.lower, { relative: 1e-12 });
    expectNear(gammaCdf(input.lambda, input.k + 1), expected.upper, { relative: 1e-12 });
  }
});

testPublished<Cases<{ p: number; lambda: number }, { q: number }>>(
  'qpois, up to the most a locker holds',
  'statistics/r-qpois.json',
  ({ cases }) => {
    const held = cases.filter(({ input }) => input.lambda < 600);
    expect(held.length).toBeGreaterThan(20);
    for (const { input, expected } of held)
      expect(coverStock(Float64Array.of(input.lambda), input.p)).toBe(expected.q);
  },
);

type Events = Cases<GammaPoisson & { k: number }, { lower: number; upper: number }>;

testPublished<Events>('pnbinom', 'statistics/r-pnbinom-gamma-poisson.json', ({ cases }) => {
  for (const { input, expected } of cases) {
    expectNear(eventsAtMost(input.k, input), expected.lower, { relative: 1e-11 });
    expectNear(eventsMoreThan(input.k, input), expected.upper, { relative: 1e-11 });
  }
});

type Stocks = Cases<GammaPoisson & { p: number }, { q: number }>;

testPublished<Stocks>('qnbinom', 'statistics/r-qnbinom-gamma-poisson.json', ({ cases }) => {
  for (const { input, expected } of cases) expect(eventsStock(input.p, input)).toBe(expected.q);
});
