// R 4.2.2, package stats: ppois, dpois, qpois, and pnbinom, qnbinom with size = shape and prob = rate / (rate + exposure);
// every value recomputed to 60 digits with mpmath.
import { expect, test } from 'vitest';
import {
  eventsAtMost,
  eventsMoreThan,
  eventsStock,
  type GammaPoisson,
} from '../../source/maths/negative-binomial.ts';
import { poissonAtMost, poissonChance, poissonMoreThan, poissonStock } from '../../source/maths/poisson.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

test("Poisson chances are R's", () => {
  for (const [k, mean, lower, upper, chance] of [
    [56, 42.87, 0.9776879680570525, 0.022312031942947463, 0.008521614804890712],
    [1, 1.093, 0.7015931814549728, 0.29840681854502715, 0.36638382576697814],
  ] as const) {
    expectNear(poissonAtMost(k, mean), lower, { relative: 1e-12 });
    expectNear(poissonMoreThan(k, mean), upper, { relative: 1e-12 });
    expectNear(poissonChance(k, mean), chance, { relative: 1e-12 });
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
  expect(poissonStock(0.99, 18.9)).toBe(30);
  expect(poissonStock(0.2, 21.06)).toBe(17);
  expect(eventsStock(0.995, { shape: 4, rate: 72.55, exposure: 669.7 })).toBe(105);
  expect(eventsStock(0.8, { shape: 0.5, rate: 525.3, exposure: 4.075 })).toBe(0);
});

type Poisson = Cases<{ k: number; lambda: number }, { lower: number; upper: number; pmf: number }>;

testPublished<Poisson>('ppois and dpois', 'statistics/r-ppois.json', ({ cases }) => {
  for (const { input, expected } of cases) {
    expectNear(poissonAtMost(input.k, input.lambda), expected.lower, { relative: 1e-12 });
    expectNear(poissonMoreThan(input.k, input.lambda), expected.upper, { relative: 1e-12 });
    expectNear(poissonChance(input.k, input.lambda), expected.pmf, { relative: 1e-12 });
  }
});

testPublished<Cases<{ p: number; lambda: number }, { q: number }>>(
  'qpois',
  'statistics/r-qpois.json',
  ({ cases }) => {
    for (const { input, expected } of cases) expect(poissonStock(input.p, input.lambda)).toBe(expected.q);
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
