import { describe, expect, it } from 'vitest';
import { agoWords } from '../../source/screens/when.ts';

describe('how long ago a look was', () => {
  it('goes by the calendar where she lies, not by the day and night since', () => {
    const now = Date.parse('2026-06-14T07:30:00Z');
    const ago = (at: string, zone = 'UTC') => agoWords(Date.parse(at), now, zone);
    expect(ago('2026-06-14T00:10:00Z')).toBe('today');
    expect(ago('2026-06-13T15:00:00Z')).toBe('yesterday');
    expect(ago('2026-06-13T15:00:00Z', 'Pacific/Auckland')).toBe('today');
    expect(ago('2026-06-09T20:00:00Z')).toBe('5 days ago');
  });
});
