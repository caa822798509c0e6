// Published worked examples of spares for a Poisson demand; the source of each stands beside it.
import { expect, test } from 'vitest';
import { gammaUpperTail } from '../../source/maths/gamma.ts';
import { coverStock } from '../../source/readiness/spares.ts';
import { expectNear, testPublished } from '../helpers/published.ts';

test.each([
  [6.48, 0.95, 11, '30 parts, 10,000 h between failures, 90 days (quesba.com 1515614)'],
  [3, 0.9, 5, 'bulbs, 3 a week (University of Southampton, edshare.soton.ac.uk/id/document/6744)'],
  [3, 0.95, 6, 'spare aircraft (math.techqa.club)'],
  [104, 0.95, 121, 'transistors, 2 a week for a year (edshare.soton.ac.uk/id/document/6210)'],
  [
    1.99,
    0.95,
    5,
    'rotable engine; the source settles for 4, whose chance is 0.948 (scribd.com/document/527806711)',
  ],
  [0.3472222222222222, 0.98, 2, '100 installed, 40,000 h, turn time 138.9 h (public example)'],
  [
    8,
    0.9,
    12,
    'three machines pooled (Trivedi, 2nd ed., chapter 6 problem 2, after Barlow; answer derived exactly)',
  ],
])('a demand of %d covered at %d takes %d: %s', (mean, chance, stock) => {
  expect(coverStock(Float64Array.of(mean), chance)).toBe(stock);
});

interface Case {
  readonly input: { readonly meanDemand?: number; readonly probability: number };
  readonly expected: {
    readonly exact: number;
    readonly 'P(N<=exact)': number;
    readonly 'P(N<=exact-1)': number;
  };
}

testPublished<{ cases: readonly Case[] }>(
  'every case with one demand',
  'statistics/poisson-spares-published.json',
  ({ cases }) => {
    const single = cases.filter(({ input }) => input.meanDemand !== undefined);
    expect(single).toHaveLength(9);
    for (const { input, expected } of single) {
      expect(coverStock(Float64Array.of(input.meanDemand!), input.probability)).toBe(expected.exact);
      expectNear(gammaUpperTail(input.meanDemand!, expected.exact + 1), expected['P(N<=exact)'], {
        relative: 1e-12,
      });
      expectNear(gammaUpperTail(input.meanDemand!, expected.exact), expected['P(N<=exact-1)'], {
        relative: 1e-12,
      });
    }
  },
);
