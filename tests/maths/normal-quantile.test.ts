import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalCdf } from '../../source/maths/normal.ts';
import { normalQuantile } from '../../source/maths/normal-quantile.ts';
import { expectNear } from '../helpers/published.ts';

test('the chance of a quantile is the chance asked for, down to 1e-300', () => {
  fc.assert(
    fc.property(fc.double({ min: -300, max: -0.31, noNaN: true }), (power) => {
      const p = 10 ** power;
      expectNear(normalCdf(normalQuantile(p)), p, { relative: 1e-12 });
    }),
  );
});

test('the two halves mirror each other', () => {
  for (let p = 2 ** -12; p < 0.5; p += 2 ** -12) expect(normalQuantile(1 - p)).toBe(-normalQuantile(p));
});

test('it never falls, across the joins of the approximation too', () => {
  for (const join of [0.075, Math.exp(-25), 0.925]) {
    for (let i = -1000; i < 1000; i += 1) {
      const p = join * (1 + i * 1e-9);
      expect(normalQuantile(p * (1 + 1e-9))).toBeGreaterThanOrEqual(normalQuantile(p));
    }
  }
});

test('nothing lies below minus infinity, all below infinity, and no chance lies outside 0 to 1', () => {
  expect([0, 0.5, 1].map(normalQuantile)).toEqual([-Infinity, 0, Infinity]);
  expect([-0.1, 1.1, Number.NaN].map(normalQuantile)).toEqual([NaN, NaN, NaN]);
});
