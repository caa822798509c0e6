import fc from 'fast-check';
import { expect, test } from 'vitest';
import { smallestCount } from '../../source/maths/smallest-count.ts';

test('finds the first count that holds, asking few times', () => {
  fc.assert(
    fc.property(fc.nat(1_000_000_000), (first) => {
      let asked = 0;
      const found = smallestCount((count) => {
        asked += 1;
        return count >= first;
      });
      expect(found).toBe(first);
      expect(asked).toBeLessThan(65);
    }),
  );
});

test('a condition nothing meets is a fault, not an endless search', () => {
  expect(() => smallestCount(() => false)).toThrow('no count is enough');
});
