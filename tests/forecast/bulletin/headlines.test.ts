import { describe, expect, test } from 'vitest';
import { headlinesFrom } from '../../../source/forecast/bulletin/headlines.ts';

/** Saturday 31 January 2026, 16:00 in a zone five hours behind. */
const issue = { at: Date.parse('2026-01-31T21:00Z'), aheadMinutes: -300 };
const read = (text: string) => headlinesFrom(text, issue)[0]!;

describe('what a headline is about', () => {
  test.each([
    ['SMALL CRAFT ADVISORY IN EFFECT', 'small craft', 'advisory'],
    ['SMALL CRAFT SHOULD EXERCISE CAUTION', 'small craft', 'advisory'],
    ['GALE WARNING', 'gale', 'warning'],
    ['GALE WATCH', 'gale', 'watch'],
    ['STORM WARNING', 'storm', 'warning'],
    ['STORM WATCH', 'storm', 'watch'],
    ['HURRICANE FORCE WIND WARNING', 'hurricane force', 'warning'],
    ['HURRICANE WATCH', 'hurricane', 'watch'],
    ['TROPICAL STORM WARNING', 'tropical storm', 'warning'],
    ['BRISK WIND ADVISORY', 'strong wind', 'advisory'],
    ['NEAR GALE WARNING', 'strong wind', 'warning'],
    ['HEAVY FREEZING SPRAY WARNING', null, 'warning'],
    ['DENSE FOG ADVISORY', null, 'advisory'],
    ['WARNINGS OF GALES IN ASTER AND HARROW', 'gale', 'warning'],
  ])('%s: %s, %s', (text, about, level) => {
    expect(read(text).headline).toMatchObject({ text, about, level, from: null, to: null });
  });
});

describe('a line that warns of several things', () => {
  const all = (text: string) =>
    headlinesFrom(text, issue).map(({ headline: { about, level, from, to } }) => [
      ...[about, level],
      ...[from, to].map((one) => one?.slice(0, 16) ?? null),
    ]);

  test('is a headline for each, with its own times', () => {
    expect(
      all('GALE WARNING IN EFFECT UNTIL 7 AM EST SUNDAY, STORM WATCH IN EFFECT THROUGH SUNDAY AFTERNOON'),
    ).toEqual([
      ['gale', 'warning', null, '2026-02-01T12:00'],
      ['storm', 'watch', null, '2026-02-01T23:00'],
    ]);
    expect(all('Small craft advisory and gale watch in effect')).toEqual([
      ['small craft', 'advisory', null, null],
      ['gale', 'watch', null, null],
    ]);
  });

  test('leaves one in force where another is cancelled', () => {
    expect(all('GALE WARNING IN EFFECT. SMALL CRAFT ADVISORY IS NO LONGER IN EFFECT')).toEqual([
      ['gale', 'warning', null, null],
      ['small craft', 'other', '2026-01-31T21:00', '2026-01-31T21:00'],
    ]);
  });

  test('is what it was replaced with', () => {
    expect(all('THE GALE WATCH HAS BEEN REPLACED WITH A GALE WARNING UNTIL 7 AM EST SUNDAY')).toEqual([
      ['gale', 'warning', null, '2026-02-01T12:00'],
    ]);
    expect(all('STORM WARNING REPLACES GALE WARNING')).toEqual([['storm', 'warning', null, null]]);
    expect(all('GALE WARNING DOWNGRADED TO A SMALL CRAFT ADVISORY')).toEqual([
      ['small craft', 'advisory', null, null],
    ]);
  });
});

describe('when it holds', () => {
  test.each([
    ['GALE WARNING IN EFFECT THROUGH SUNDAY AFTERNOON', null, '2026-02-01T23:00'],
    ['GALE WARNING IN EFFECT UNTIL 7 AM EST SUNDAY', null, '2026-02-01T12:00'],
    ['GALE WARNING IN EFFECT UNTIL 7 PM EST THIS EVENING', null, '2026-02-01T00:00'],
    ['GALE WARNING IN EFFECT UNTIL MIDNIGHT EST TONIGHT', null, '2026-02-01T05:00'],
    ['GALE WARNING IN EFFECT UNTIL 3 AM EST LATE TONIGHT', null, '2026-02-01T08:00'],
    [
      'GALE WARNING IN EFFECT FROM 6 PM THIS EVENING TO NOON EST SUNDAY',
      '2026-01-31T23:00',
      '2026-02-01T17:00',
    ],
    ['GALE WATCH IN EFFECT FROM SUNDAY EVENING THROUGH MONDAY NIGHT', '2026-02-01T23:00', '2026-02-03T11:00'],
    ['GALE WARNING IN EFFECT LATE TONIGHT', null, null],
  ])('%s', (text, from, to) => {
    const { headline, timesRead } = read(text);
    expect([headline.from?.slice(0, 16) ?? null, headline.to?.slice(0, 16) ?? null, timesRead]).toEqual([
      from,
      to,
      true,
    ]);
  });

  test('where its times are not understood it is in force throughout, and that is said', () => {
    const { headline, timesRead } = read('GALE WARNING IN EFFECT UNTIL FURTHER NOTICE');
    expect([headline.from, headline.to, timesRead]).toEqual([null, null, false]);
  });

  test('cancelled or no longer in effect it is over', () => {
    for (const text of [
      'GALE WARNING IS CANCELLED',
      'SMALL CRAFT ADVISORY NO LONGER IN EFFECT',
      'THERE ARE NO GALE WARNINGS IN FORCE',
    ]) {
      const { headline } = read(text);
      expect([headline.level, headline.from, headline.to], text).toEqual([
        'other',
        '2026-01-31T21:00:00.000Z',
        '2026-01-31T21:00:00.000Z',
      ]);
    }
  });
});
