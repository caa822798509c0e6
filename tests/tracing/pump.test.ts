import { describe, expect, it } from 'vitest';
import { stream } from '../../source/maths/stream.ts';
import { pumpRate } from '../../source/tracing/pump.ts';

const DAY = 86_400_000;
const answered = (values: readonly number[]) => ({
  answers: values.map((value, i) => ({ at: i * DAY, ok: null, value })),
});

describe('the bilge pump\u2019s cycles a day', () => {
  it('as they ever were show no change', () => {
    expect(pumpRate(answered([2, 1, 2, 3, 2, 1, 2, 2]))).toMatchObject({
      perDay: 1.875,
      since: 0,
      before: null,
    });
  });

  it('that became many start a new rate on the day they did', () => {
    const rate = pumpRate(answered([2, 1, 2, 3, 2, 1, 9, 11, 10, 12]))!;
    expect(rate.since).toBe(6 * DAY);
    expect(rate.perDay).toBeCloseTo(10.5, 12);
    expect(rate.before!.perDay).toBeCloseTo(11 / 6, 12);
    expect(rate.before!.p90, 'the two cannot be mistaken for one').toBeLessThan(rate.p10);
  });

  it('are told of only from five counts on', () => {
    expect(pumpRate(answered([2, 9, 9, 9]))).toBeNull();
  });

  it('that were never any are near none, and no more than so many days can say', () => {
    const rate = pumpRate(answered([0, 0, 0, 0, 0, 0, 0, 0, 0, 0]))!;
    expect(rate.perDay).toBe(0);
    expect(rate.p90).toBeGreaterThan(0.05);
    expect(rate.p90).toBeLessThan(0.3);
  });

  it.each([
    ['as likely every day', 0.77, () => 1],
    ['far more on one day in four', 0.7, (chance: () => number) => (chance() < 0.25 ? 2.5 : 0.5)],
  ])('lie within the range told about 8 times in 10, where they are %s', (what, least, weather) => {
    const chance = stream(5, what);
    const uniform = () => chance.uniform();
    let [held, told] = [0, 0];
    for (let i = 0; i < 2000; i += 1) {
      const rate = 1 + 4 * uniform();
      const counts = Array.from({ length: 14 }, () => poisson(rate * weather(uniform), uniform));
      const { before, p10, p90 } = pumpRate(answered(counts))!;
      if (before !== null) continue;
      told += 1;
      if (p10 <= rate && rate <= p90) held += 1;
    }
    expect(told).toBeGreaterThan(1000);
    expect(held / told).toBeGreaterThan(least);
    expect(held / told).toBeLessThan(0.84);
  });
});

/** Knuth's way: uniforms multiplied until less than exp(-mean). */
function poisson(mean: number, uniform: () => number): number {
  let [count, product] = [-1, 1];
  while (product > Math.exp(-mean)) {
    product *= uniform();
    count += 1;
  }
  return count;
}
