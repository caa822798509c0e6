// Spares for a rate known only from few failures: inputs from the forum question "Provision Spares with Confidence"
// (www.eng-tips.com/viewthread.cfm?qid=437516), answers derived to 50 digits from the negative binomial.
import { expect, test } from 'vitest';
import { eventsAtMost, eventsStock } from '../../source/maths/negative-binomial.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

interface Input {
  readonly hoursObserved: number;
  readonly failures: number;
  readonly hoursAhead: number;
  readonly priorShapeAdded: number;
  readonly probability: number;
}

function check(input: Input, expected: { readonly spares: number; readonly cdf: number }): void {
  const demand = {
    shape: input.failures + input.priorShapeAdded,
    rate: input.hoursObserved,
    exposure: input.hoursAhead,
  };
  expect(eventsStock(input.probability, demand)).toBe(expected.spares);
  expectNear(eventsAtMost(expected.spares, demand), expected.cdf, { absolute: 1e-10 });
}

test('no failure in 32,441 hours does not mean no spares for the next 90,247', () => {
  const seen = { hoursObserved: 32_441, failures: 0, hoursAhead: 90_247, probability: 0.8 };
  check({ ...seen, priorShapeAdded: 0.5 }, { spares: 2, cdf: 0.8076777179658368 });
  check({ ...seen, priorShapeAdded: 1 }, { spares: 5, cdf: 0.8415894424398728 });
});

testPublished<Cases<Input, { spares: number; cdf: number }>>(
  'both units',
  'statistics/gamma-poisson-predictive-spares.json',
  ({ cases }) => {
    for (const { input, expected } of cases) check(input, expected);
  },
);
