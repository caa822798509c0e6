import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { momentFrom } from '../../source/words/moments.ts';
import { momentWords } from '../../source/words/say.ts';

/** 00:30 on 4 February in Auckland, where clocks are 13 h ahead. */
const NOW = Date.UTC(2026, 1, 3, 11, 30);

const read = (typed: string, zone = 'UTC') => {
  const at = momentFrom(typed, NOW, zone);
  return at === null ? null : new Date(at).toISOString();
};

describe('a moment as typed', () => {
  it.each([
    ['2026-02-03T07:40Z', '2026-02-03T07:40:00.000Z'],
    ['2026-02-03T07:40:05.5z', '2026-02-03T07:40:05.500Z'],
    ['2026-02-03 07:40+02:00', '2026-02-03T05:40:00.000Z'],
    ['now', '2026-02-03T11:30:00.000Z'],
    ['20 min ago', '2026-02-03T11:10:00.000Z'],
    ['1,5 h ago', '2026-02-03T10:00:00.000Z'],
    ['2 days ago', '2026-02-01T11:30:00.000Z'],
  ])('%j is the same in every zone', (typed, instant) => {
    expect(read(typed, 'UTC')).toBe(instant);
    expect(read(typed, 'Pacific/Auckland')).toBe(instant);
  });

  it.each([
    ['2026-02-03', 'UTC', '2026-02-03T00:00:00.000Z'],
    ['2026-02-03 07:40', 'UTC', '2026-02-03T07:40:00.000Z'],
    ['2026-07-03T07:40', 'Europe/London', '2026-07-03T06:40:00.000Z'],
    ['2026-02-03T07:40', 'Europe/London', '2026-02-03T07:40:00.000Z'],
    ['7:40', 'Pacific/Auckland', '2026-02-03T18:40:00.000Z'],
    ['yesterday 18:00', 'Pacific/Auckland', '2026-02-03T05:00:00.000Z'],
    ['Yesterday', 'Asia/Kolkata', '2026-02-01T18:30:00.000Z'],
    ['today 06:05', 'America/St_Johns', '2026-02-03T09:35:00.000Z'],
  ])('%j by the clocks of %s is %s', (typed, zone, instant) => {
    expect(read(typed, zone)).toBe(instant);
  });

  it('that comes twice when clocks go back is the first; one that is left out is none', () => {
    expect(read('2026-10-25 01:30', 'Europe/London')).toBe('2026-10-25T00:30:00.000Z');
    expect(read('2026-03-29 01:30', 'Europe/London')).toBeNull();
  });

  it.each(['', ' ', 'soon', '25:00', '07:60', '2026-02-30', '2026-13-01T00:00Z', '7', 'ago', '3 moons ago'])(
    '%j is not understood',
    (typed) => {
      expect(read(typed)).toBeNull();
    },
  );

  it('that the program wrote is read back, to the minute, in any zone', () => {
    const zones = fc.constantFrom('UTC', 'Pacific/Chatham', 'America/New_York', 'Europe/Paris');
    const minutes = fc.integer({ min: 28_000_000, max: 32_000_000 });
    fc.assert(
      fc.property(minutes, zones, (minute, zone) => {
        const [, day, month, year, time] = momentWords(minute * 60_000, zone).split(' ');
        const number = String(MONTHS.indexOf(month!) + 1).padStart(2, '0');
        const back = momentFrom(`${year}-${number}-${day!.padStart(2, '0')} ${time}`, NOW, zone);
        expect(back === minute * 60_000 || back === minute * 60_000 - 3_600_000).toBe(true);
      }),
    );
  });

  it('never takes long, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (typed) => {
        const at = momentFrom(typed, NOW, 'UTC');
        expect(at === null || Number.isFinite(at)).toBe(true);
      }),
    );
  });
});

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
