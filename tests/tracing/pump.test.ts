import { describe, expect, it } from 'vitest';
import { pumpRate } from '../../source/tracing/pump.ts';

const DAY = 86_400_000;
const answered = (values: readonly number[]) => ({
  answers: values.map((value, i) => ({ at: i * DAY, ok: null, value })),
});

describe('the bilge pump\u2019s cycles a day', () => {
  it('as they ever were show no change', () => {
    expect(pumpRate(answered([2, 1, 2, 3, 2, 1, 2, 2]))).toEqual({ perDay: 1.875, since: 0, before: null });
  });

  it('that became many start a new rate on the day they did', () => {
    const rate = pumpRate(answered([2, 1, 2, 3, 2, 1, 9, 11, 10, 12]))!;
    expect(rate.since).toBe(6 * DAY);
    expect(rate.perDay).toBeCloseTo(10.5, 12);
    expect(rate.before).toBeCloseTo(11 / 6, 12);
  });

  it('are told of only from five counts on', () => {
    expect(pumpRate(answered([2, 9, 9, 9]))).toBeNull();
  });
});
