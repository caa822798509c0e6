// NIST/SEMATECH e-Handbook of Statistical Methods: 8.4.5.1 constant repair rate, 8.4.5.2 power law, 8.4.6 Bayesian gamma prior
// (with test planning 8.3.1.5): www.itl.nist.gov/div898/handbook/apr. The examples are worked here with the program's distributions.
import { expect, test } from 'vitest';
import { gammaCdf } from '../../source/maths/gamma.ts';
import { gammaQuantile } from '../../source/maths/gamma-quantile.ts';
import { normalQuantile } from '../../source/maths/normal-quantile.ts';
import { expectNear } from '../helpers/published.ts';

const digits = { relative: 1e-10 };

test('8.4.5.1: 2 failures in 800 hours bound the mean time between failures by 127.069 and 2251.229 hours (printed), 9 chances in 10', () => {
  expectNear(800 / gammaQuantile(0.95, 3), 127.06896827442831, digits);
  expectNear(800 / gammaQuantile(0.05, 2), 2251.2286106257034, digits);
});

test('8.4.5.1: no failure in 800 hours bounds it from below by 267 hours', () => {
  expectNear(800 / gammaQuantile(0.95, 1), 267.04656055626725, digits);
});

test('8.4.6: prior gamma(2, 1400 h) and 2 failures in 1909 h leave medians and bounds of 901, 600 and 495 hours', () => {
  const [shape, rate] = [4, 3309];
  expectNear(rate / gammaQuantile(0.5, shape), 901.1288827494183, digits);
  expectNear(rate / gammaQuantile(0.8, shape), 599.995026497993, digits);
  expectNear(rate / gammaQuantile(0.9, shape), 495.3012193619801, digits);
  expectNear(rate / gammaQuantile(0.95, shape), 426.7663892615376, digits);
  expectNear(rate / gammaQuantile(0.1, shape), 1896.5255186148956, digits);
  expectNear(gammaCdf(rate / 600, shape), 0.7999948547454052, digits);
});

test('8.3.1.5: to show 600 hours with 2 failures allowed, at 8 chances in 10, takes 1909 hours of test', () => {
  expectNear(600 * gammaQuantile(0.8, 4) - 1400, 1909.027429090933, digits);
});

test('8.4.5.2: the power law of case study 1: growth slope 0.516494, 157.7138 to 548.5566 hours, by normal deviates', () => {
  const times = [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478];
  const end = 1500;
  const r = times.length;
  const b = (r - 1) / times.reduce((sum, time) => sum + Math.log(end / time), 0);
  expectNear(1 - b, 0.5164940205692311, { relative: 1e-11 });
  const mean = end / (b * r);
  const square = normalQuantile(0.9) ** 2;
  const below = (mean * r * (r - 1)) / (r + square / 4 + Math.sqrt((r * square) / 2 + square ** 2 / 16)) ** 2;
  const above = (mean * r * (r - 1)) / (r - Math.sqrt((r * square) / 2)) ** 2;
  expect(mean).toBeCloseTo(310.234, 3);
  expectNear(below, 157.71383403939126, { relative: 1e-11 });
  expectNear(above, 548.5565977314155, { relative: 1e-11 });
});
