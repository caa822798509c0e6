import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gammaCdf, gammaUpperTail } from '../../source/maths/gamma.ts';
import { gammaQuantile, logGammaQuantile } from '../../source/maths/gamma-quantile.ts';
import { gammaTerm, logGammaOfNext } from '../../source/maths/gamma-term.ts';
import { expectNear } from '../helpers/published.ts';

const shape = fc.double({ min: -2, max: 5, noNaN: true }).map((power) => 10 ** power);
const share = fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true });

test('Gamma(n + 1) is n factorial, and Gamma(1.5) half the root of pi', () => {
  let factorial = 1;
  for (let n = 1; n <= 20; n += 1) {
    factorial *= n;
    expectNear(logGammaOfNext(n), Math.log(factorial), { relative: 1e-14, absolute: 2e-15 });
  }
  expectNear(logGammaOfNext(0.5), Math.log(Math.sqrt(Math.PI) / 2), { relative: 1e-14 });
});

test('with shape 1 it is the exponential', () => {
  for (const x of [1e-10, 0.3, 1, 5, 40]) {
    expectNear(gammaUpperTail(x, 1), Math.exp(-x), { relative: 1e-13 });
    expectNear(gammaCdf(x, 1), -Math.expm1(-x), { relative: 1e-13 });
  }
});

test('one more in the shape takes away one term: Abramowitz and Stegun 6.5.21', () => {
  fc.assert(
    fc.property(shape, share, (a, p) => {
      const x = gammaQuantile(p, a);
      fc.pre(x > 1e-300);
      expectNear(gammaCdf(x, a) - gammaCdf(x, a + 1), gammaTerm(a, x), { absolute: 1e-12 });
    }),
  );
});

test('the chance below a quantile is the chance asked for, for shapes from 0.01 to 100,000', () => {
  fc.assert(
    fc.property(shape, share, (a, p) => {
      const x = gammaQuantile(p, a);
      fc.pre(x > 1e-300);
      expectNear(gammaCdf(x, a), p, { relative: 1e-11 });
      expectNear(gammaUpperTail(x, a), 1 - p, { relative: 1e-3, absolute: 1e-12 });
    }),
    { numRuns: 1000 },
  );
});

test('shapes past a million join on without a step, and take no longer', () => {
  for (const sds of [-5, -1, 0, 2, 6]) {
    const chance = (a: number) => gammaCdf(a + sds * Math.sqrt(a), a);
    expectNear(chance(1_000_001), chance(999_999), { absolute: 1e-8 });
  }
  expectNear(gammaQuantile(0.5, 1e12), 1e12 - 1 / 3, { relative: 1e-12 });
});

test('a quantile too small to be a number still has a log', () => {
  expect(gammaQuantile(1e-9, 0.01)).toBe(0);
  expectNear(logGammaQuantile(1e-9, 1 - 1e-9, 0.01), 100 * (Math.log(1e-9) + logGammaOfNext(0.01)), {
    relative: 1e-14,
  });
});

test('nothing lies below 0, all below infinity', () => {
  expect([
    gammaCdf(0, 2),
    gammaCdf(-1, 2),
    gammaUpperTail(0, 2),
    gammaCdf(1e9, 2),
    gammaUpperTail(1e9, 2),
  ]).toEqual([0, 0, 1, 1, 0]);
  expect([gammaQuantile(0, 2), gammaQuantile(1, 2)]).toEqual([0, Infinity]);
});
