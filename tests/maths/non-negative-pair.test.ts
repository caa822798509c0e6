import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nonNegativePair } from '../../source/maths/non-negative-pair.ts';

const value = fc.double({ min: -10, max: 10, noNaN: true });

test('no other pair of coefficients not below zero comes nearer', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(value, value, value), { maxLength: 12 }),
      value.map(Math.abs),
      value.map(Math.abs),
      (data, p, q) => {
        const rows = [...data, [10, 1, 0], [1, 10, 0]] as const;
        const [a, b, y] = [0, 1, 2].map((j) => Float64Array.from(rows, (row) => row[j]!)) as [
          Float64Array,
          Float64Array,
          Float64Array,
        ];
        const fit = nonNegativePair(a, b, y);
        expect(Math.min(fit.first, fit.second)).toBeGreaterThanOrEqual(0);
        const apart = (first: number, second: number) =>
          Math.hypot(...y.map((wanted, i) => wanted - first * a[i]! - second * b[i]!));
        for (const share of [0, 1e-3, 0.1, 1]) {
          const first = fit.first + share * (p - fit.first);
          const second = fit.second + share * (q - fit.second);
          expect(apart(first, second)).toBeGreaterThanOrEqual(fit.residual * (1 - 1e-9) - 1e-9);
        }
      },
    ),
  );
});
