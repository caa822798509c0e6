import fc from 'fast-check';
import { expect, test } from 'vitest';
import { poissonAtMost, poissonChance, poissonMoreThan, poissonStock } from '../../source/maths/poisson.ts';
import { expectNear } from '../helpers/published.ts';

const mean = fc.double({ min: 1e-3, max: 200, noNaN: true });

test('the chance of at most k is the sum of the chances of each', () => {
  fc.assert(
    fc.property(mean, fc.nat(300), (expected, k) => {
      let sum = 0;
      for (let n = 0; n <= k; n += 1) sum += poissonChance(n, expected);
      expectNear(poissonAtMost(k, expected), sum, { relative: 1e-12, absolute: 1e-300 });
      expectNear(poissonMoreThan(k, expected), 1 - sum, { absolute: 1e-13 });
    }),
  );
});

test('the stock for a chance reaches it, and one less does not', () => {
  fc.assert(
    fc.property(mean, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (expected, chance) => {
      const stock = poissonStock(chance, expected);
      expect(poissonAtMost(stock, expected)).toBeGreaterThanOrEqual(chance);
      if (stock > 0) expect(poissonAtMost(stock - 1, expected)).toBeLessThan(chance);
    }),
  );
});
