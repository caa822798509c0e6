import { describe, expect, it } from 'vitest';
import { isStale } from '../../source/condition/look.ts';

const DAY = 86_400_000;
const at = Date.UTC(2026, 0, 1);
const stale = (everyDays: number | undefined, days: number) => isStale(everyDays, at - days * DAY, at);

describe('a look', () => {
  it('due often is stale after three intervals', () => {
    expect([stale(1, 3), stale(1, 3.01), stale(3, 9), stale(3, 9.5)]).toEqual([false, true, false, true]);
  });

  it('due seldom is stale ten days after it was due', () => {
    expect([stale(30, 40), stale(30, 40.01)]).toEqual([false, true]);
  });

  it('with no interval never is', () => {
    expect(stale(undefined, 10_000)).toBe(false);
  });
});
