import { describe, expect, it } from 'vitest';
import { timeTicks } from '../../../source/screens/charts/time-axis.ts';

const at = (instant: string) => Date.parse(instant);
const words = (ticks: readonly { word: string }[]) => ticks.map(({ word }) => word);

describe('the time axis', () => {
  it('names the days of a week where they begin in the zone', () => {
    const ticks = timeTicks(at('2026-02-03T07:40:00Z'), at('2026-02-06T07:40:00Z'), 'UTC', 10);
    expect(words(ticks)).toEqual(['Wed', 'Thu', 'Fri']);
    expect(ticks[0]!.at).toBe(at('2026-02-04T00:00:00Z'));
  });

  it('in another zone the day begins at another moment', () => {
    const [first] = timeTicks(at('2026-02-03T07:40:00Z'), at('2026-02-06T07:40:00Z'), 'Pacific/Auckland', 10);
    expect(first!.at).toBe(at('2026-02-03T11:00:00Z'));
  });

  it('a day begins at midnight on both sides of a change of the clocks', () => {
    const ticks = timeTicks(at('2026-03-27T12:00:00Z'), at('2026-03-31T12:00:00Z'), 'Europe/London', 10);
    expect(ticks.map((tick) => new Date(tick.at).toISOString().slice(0, 16))).toEqual([
      '2026-03-28T00:00',
      '2026-03-29T00:00',
      '2026-03-29T23:00',
      '2026-03-30T23:00',
    ]);
    const autumn = timeTicks(at('2026-10-24T12:00:00Z'), at('2026-10-27T12:00:00Z'), 'Europe/London', 10);
    expect(autumn.map((tick) => new Date(tick.at).toISOString().slice(0, 16))).toEqual([
      '2026-10-24T23:00',
      '2026-10-26T00:00',
      '2026-10-27T00:00',
    ]);
  });

  it('over months it gives dates, over years months, and never more than asked for', () => {
    const from = at('2025-10-14T00:00:00Z');
    const months = timeTicks(from, at('2026-06-14T00:00:00Z'), 'UTC', 6);
    expect(months.length).toBeLessThanOrEqual(7);
    expect(words(months)[0]).toBe('14 Oct');
    expect(words(timeTicks(from, at('2028-06-14T00:00:00Z'), 'UTC', 6))[0]).toBe('Oct 2025');
  });
});
