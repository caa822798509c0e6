import { describe, expect, it } from 'vitest';
import type { VerdictDocument } from '../../source/words/document.ts';
import { stayingPresses } from '../../source/words/staying.ts';
import { AT, aDocument } from '../helpers/a-document.ts';

/** The window of the invented document opens Thu 5 Feb 06:00. */
const until = (instant: string, more: Partial<VerdictDocument> = {}) =>
  stayingPresses(aDocument({ staying: { until: instant, why: 'wind over 30 kn' }, ...more }));
const work = (minutes: number): VerdictDocument['toGetReady'] => [
  { do: 'renew', item: 'pencil', takes: [], minutes, boatScoreAfter: 97, buys: null },
];

describe('staying is the danger', () => {
  it('where it ends before the window opens, or as it does; not where she can leave before', () => {
    expect(until('2026-02-05T05:00:00Z')).toBe(true);
    expect(until('2026-02-05T06:00:00Z')).toBe(true);
    expect(until('2026-02-05T07:00:00Z')).toBe(false);
    expect(until('2026-02-05T07:00:00Z', { windows: [] })).toBe(true);
    expect(stayingPresses(aDocument())).toBe(false);
  });

  it('where it ends before the work is done', () => {
    const ready = { verdict: 'go' as const, toGetReady: work(90) };
    expect(until('2026-02-03T09:00:00Z', ready)).toBe(true);
    expect(until('2026-02-03T09:20:00Z', ready)).toBe(false);
    expect(until(AT, { verdict: 'go' })).toBe(true);
  });

  it('where she is not ready and no work known makes her so, or the weather alone opens later', () => {
    const weatherAlone = { at: '2026-02-04T06:00:00Z', until: '2026-02-04T18:00:00Z', startWorkBy: null };
    const given = { verdict: 'not ready' as const, windows: [], weatherAlone, toGetReady: work(60) };
    expect(until('2026-02-04T07:00:00Z', given)).toBe(false);
    expect(until('2026-02-04T05:00:00Z', given)).toBe(true);
    expect(until('2026-02-04T07:00:00Z', { ...given, toGetReadySuffices: false })).toBe(true);
    expect(until('2026-02-04T07:00:00Z', { ...given, weatherAlone: null })).toBe(true);
  });

  it('where a window is open and something else keeps her: nobody knows how long', () => {
    const windows = [{ at: AT, until: '2026-02-05T15:00:00Z', score: 91, opens: null, closes: null }];
    expect(until('2026-02-09T07:00:00Z', { windows })).toBe(true);
  });
});
