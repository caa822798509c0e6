import { expect, test } from 'vitest';
import { gammaDraws } from '../../source/maths/gamma-draws.ts';
import { gammaQuantile } from '../../source/maths/gamma-quantile.ts';
import { stream } from '../../source/maths/stream.ts';
import { expectNear } from '../helpers/published.ts';

test.each([0.05, 0.3, 1, 2.5, 20, 4000])(
  'each draw of shape %d is the quantile of its uniform, within 1e-6',
  (shape) => {
    const draws = gammaDraws({ shape, rate: 2 }, 4096, stream(1, 'wear'));
    const uniforms = stream(1, 'wear');
    for (const draw of draws)
      expectNear(draw, gammaQuantile(uniforms.uniform(), shape) / 2, { relative: 1e-6, absolute: 1e-290 });
  },
);

test('the first draws stay the same when more are drawn', () => {
  const few = gammaDraws({ shape: 0.7, rate: 3 }, 4096, stream(1, 'spare'));
  expect(gammaDraws({ shape: 0.7, rate: 3 }, 65_536, stream(1, 'spare')).subarray(0, 4096)).toEqual(few);
});

test('no shape gives a draw that is not a number', () => {
  for (const shape of [1e-3, 1e-2, 1e3, 1e7, 1e10]) {
    expect(
      gammaDraws({ shape, rate: 1 }, 4096, stream(1, 'any')).every(
        (draw) => draw >= 0 && Number.isFinite(draw),
      ),
    ).toBe(true);
  }
});

test('none asked for, none given', () => {
  expect(gammaDraws({ shape: 2, rate: 1 }, 0, stream(1, 'none'))).toHaveLength(0);
});
