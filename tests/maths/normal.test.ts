import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  logNormalCdf,
  logNormalUpperTail,
  normalCdf,
  normalDensity,
  normalHazard,
  normalUpperTail,
} from '../../source/maths/normal.ts';
import { expectNear } from '../helpers/published.ts';

const deviate = fc.double({ min: -37, max: 37, noNaN: true });

test('below and above make one', () => {
  fc.assert(
    fc.property(deviate, (x) => expectNear(normalCdf(x) + normalUpperTail(x), 1, { absolute: 1e-15 })),
  );
});

test('the chance never falls as the deviate rises, across the joins of the approximation too', () => {
  const chances = Array.from({ length: 74_000 }, (_, i) => normalCdf(-37 + i / 1000));
  expect(chances.every((chance, i) => i === 0 || chance >= chances[i - 1]!)).toBe(true);
});

test('its slope is the density', () => {
  fc.assert(
    fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (x) => {
      const slope = (normalCdf(x + 1e-4) - normalCdf(x - 1e-4)) / 2e-4;
      expectNear(slope, normalDensity(x), { relative: 1e-5, absolute: 1e-11 });
    }),
  );
});

test('logs hold where the chance itself is too small to be a number', () => {
  // Q(x) = density / x * (1 - 1/x^2 + 3/x^4 - ...): Abramowitz and Stegun 26.2.12.
  for (const x of [40, 100, 1e4, 1e8]) {
    const inverse = x ** -2;
    const series = Math.log1p(-inverse + 3 * inverse ** 2 - 15 * inverse ** 3) - Math.log(x);
    expectNear(logNormalUpperTail(x), -0.5 * x * x - 0.5 * Math.log(2 * Math.PI) + series, {
      relative: 1e-13,
    });
    expect(logNormalCdf(-x)).toBe(logNormalUpperTail(x));
  }
  expect(normalUpperTail(40)).toBe(0);
});

test('the hazard is density over tail, and in the far tail a little more than the deviate', () => {
  for (const x of [-3, 0, 2, 30])
    expectNear(normalHazard(x), normalDensity(x) / normalUpperTail(x), { relative: 1e-12 });
  expectNear(normalHazard(1e6), 1e6 + 1e-6, { relative: 1e-15 });
});
