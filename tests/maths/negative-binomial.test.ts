import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gammaUpperTail } from '../../source/maths/gamma.ts';
import { logGammaOfNext } from '../../source/maths/gamma-term.ts';
import { eventsAtMost, eventsMoreThan, eventsStock } from '../../source/maths/negative-binomial.ts';
import { integral } from '../../source/maths/quadrature.ts';
import { expectNear } from '../helpers/published.ts';

const demand = fc.record({
  shape: fc.double({ min: 0.1, max: 30, noNaN: true }),
  rate: fc.double({ min: 0.1, max: 5000, noNaN: true }),
  exposure: fc.double({ min: 0.1, max: 5000, noNaN: true }),
});

test('the chance of at most k is the sum of the chances of each', () => {
  fc.assert(
    fc.property(demand, fc.nat(60), (ahead, k) => {
      const { shape, rate, exposure } = ahead;
      let chance = (rate / (rate + exposure)) ** shape;
      let sum = chance;
      for (let n = 0; n < k; n += 1) {
        chance *= (((shape + n) / (n + 1)) * exposure) / (rate + exposure);
        sum += chance;
      }
      expectNear(eventsAtMost(k, ahead), sum, { relative: 1e-11, absolute: 1e-300 });
      expectNear(eventsMoreThan(k, ahead), 1 - sum, { absolute: 1e-12 });
    }),
  );
});

test('it is the Poisson chance averaged over the rate', () => {
  const { shape, rate, exposure } = { shape: 2.5, rate: 100, exposure: 240 };
  const density = (x: number) =>
    Math.exp((shape - 1) * Math.log(x * rate) - x * rate - logGammaOfNext(shape) + Math.log(shape * rate));
  const average = integral((x) => density(x) * gammaUpperTail(x * exposure, 5), 0, 0.4, 200);
  expectNear(eventsAtMost(4, { shape, rate, exposure }), average, { relative: 1e-5 });
});

test('where the rate is known well it is the Poisson itself', () => {
  expectNear(eventsAtMost(5, { shape: 3e6, rate: 1e6, exposure: 1 }), gammaUpperTail(3, 6), {
    relative: 1e-6,
  });
});

test('the stock for a chance reaches it, and one less does not, even where thousands are wanted', () => {
  fc.assert(
    fc.property(demand, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (ahead, chance) => {
      const stock = eventsStock(chance, ahead);
      expect(eventsAtMost(stock, ahead)).toBeGreaterThanOrEqual(chance);
      if (stock > 0) expect(eventsAtMost(stock - 1, ahead)).toBeLessThan(chance);
    }),
  );
});
