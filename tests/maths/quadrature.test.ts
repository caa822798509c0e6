import { expect, test } from 'vitest';
import { normalDensity, normalUpperTail } from '../../source/maths/normal.ts';
import { gaussLegendre, integral } from '../../source/maths/quadrature.ts';
import { expectNear } from '../helpers/published.ts';

test('the five-point rule is that of Abramowitz and Stegun, table 25.4', () => {
  const { places, weights } = gaussLegendre(5);
  const wanted = [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664];
  expect([...places]).toEqual(wanted.map((place) => expect.closeTo(place, 14)));
  const shares = [
    0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189,
  ];
  expect([...weights]).toEqual(shares.map((share) => expect.closeTo(share, 14)));
});

test('exact for polynomials up to degree 2n - 1, and not beyond', () => {
  for (const points of [1, 2, 3, 8, 20]) {
    const degree = 2 * points - 1;
    expectNear(
      integral((x) => x ** degree, 0, 1, points),
      1 / (degree + 1),
      { relative: 1e-13 },
    );
    const beyond = integral((x) => x ** (degree + 1), 0, 1, points) * (degree + 2);
    if (points < 8) expect(Math.abs(beyond - 1)).toBeGreaterThan(1e-9);
  }
});

test('the weights of any rule add up to 2', () => {
  for (const points of [1, 2, 7, 64, 200]) {
    expectNear(
      gaussLegendre(points).weights.reduce((sum, weight) => sum + weight, 0),
      2,
      { relative: 1e-13 },
    );
  }
});

test('64 points give a bell curve to full precision, and a tail to its own last digits', () => {
  expectNear(integral(normalDensity, -9, 9), 1, { relative: 1e-13 });
  expectNear(integral(normalDensity, 12, 16), normalUpperTail(12), { relative: 1e-12 });
});
