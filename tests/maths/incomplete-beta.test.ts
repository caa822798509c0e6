import fc from 'fast-check';
import { expect, test } from 'vitest';
import { regularisedBeta } from '../../source/maths/incomplete-beta.ts';
import { integral } from '../../source/maths/quadrature.ts';
import { expectNear } from '../helpers/published.ts';

const size = fc.double({ min: -2, max: 4, noNaN: true }).map((power) => 10 ** power);
const share = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });

test('the two shares make one', () => {
  fc.assert(
    fc.property(share, size, size, (x, a, b) => {
      expectNear(regularisedBeta(x, 1 - x, a, b) + regularisedBeta(1 - x, x, b, a), 1, { absolute: 1e-12 });
    }),
  );
});

test('with b = 1 it is the power x^a, with a = 1 the power taken from above', () => {
  fc.assert(
    fc.property(share, size, (x, a) => {
      expectNear(regularisedBeta(x, 1 - x, a, 1), x ** a, { relative: 1e-11, absolute: 1e-300 });
      expectNear(regularisedBeta(x, 1 - x, 1, a), -Math.expm1(a * Math.log1p(-x)), {
        relative: 1e-11,
        absolute: 1e-300,
      });
    }),
  );
});

test('it is the integral of its density', () => {
  const upTo20 = fc.double({ min: 2, max: 20, noNaN: true });
  fc.assert(
    fc.property(share, upTo20, upTo20, (x, a, b) => {
      const density = (t: number) => t ** (a - 1) * (1 - t) ** (b - 1);
      const part = integral(density, 0, x);
      expectNear(regularisedBeta(x, 1 - x, a, b), part / (part + integral(density, x, 1)), {
        absolute: 1e-6,
      });
    }),
  );
});

test('ends where the two shares, each rounded up, both lie beyond the mark between the sides', () => {
  const t = 1.6383560438182505;
  const [x, complement] = [17 / (17 + t * t), (t * t) / (17 + t * t)];
  expect(x + complement).toBeGreaterThan(1);
  expectNear(regularisedBeta(x, complement, 8.5, 0.5) + regularisedBeta(complement, x, 0.5, 8.5), 1, {
    absolute: 1e-12,
  });
});
