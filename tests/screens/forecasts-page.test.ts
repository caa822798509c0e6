import { describe, expect, it } from 'vitest';
import { pageOf } from '../../source/screens/model.ts';
import { update } from '../../source/screens/update.ts';
import { widthOf } from '../../source/screens/width.ts';
import { bad, good } from '../../source/trouble.ts';
import type { AboardDocument } from '../../source/words/forecasts-document.ts';
import { aDocument } from '../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../helpers/a-model.ts';

const aboard = (hour: number, more: Partial<AboardDocument> = {}): AboardDocument => ({
  name: `20260203T0${hour}00Z-aaaaaaaaaaaa`,
  source: 'bulletin',
  issuer: 'Harbour Office',
  members: 0,
  places: [''],
  issuedAt: `2026-02-03T0${hour}:00:00Z`,
  receivedAt: `2026-02-03T0${hour}:20:00Z`,
  ageHours: 7.67 - hour,
  from: `2026-02-03T0${hour}:00:00Z`,
  until: '2026-02-06T06:00:00Z',
  counts: false,
  chosen: false,
  ahead: { hours: 48, wind: 20, gust: null, seas: 1.5 },
  ...more,
});
const three = aDocument({
  forecasts: [
    aboard(6),
    aboard(5, { counts: true, chosen: true, source: 'grib' }),
    aboard(1, { ahead: null }),
  ],
  met: {
    looks: 34,
    wanted: 30,
    by: [
      { what: 'wind', leadDays: [0, 1], count: 20, mean: -1.24, sd: 2.31 },
      { what: 'direction', leadDays: [1, 2], count: 1, mean: 9, sd: null },
      { what: 'seas', leadDays: [3, null], count: 4, mean: 0.002, sd: 0.2 },
    ],
    own: { wind: { atIssue: 2, perDay: 0.64 } },
  },
});
const at = (size: (typeof SIZES)[number], ...keys: string[]) =>
  moved(aModel({ size }, three), 'w', 'f', ...keys);
const flat = (lines: readonly string[]) => lines.join(' ').replace(/\s+/gu, ' ');

describe('the forecasts aboard', () => {
  it('stand side by side, the one that counts marked and pointed at, with how far off they have been', () => {
    const text = flat(seen(at(SIZES[2])));
    expect(text).toContain('> * 2 Tue 3 Feb 05:00 2 h 40 min 2 d 22 h 20 kn - 1.5 m grib, Harbour Office');
    expect(text).toContain('3 Tue 3 Feb 01:00 6 h 40 min 2 d 22 h - - - bulletin, Harbour Office');
    expect(text).toContain('Number 2 counts by your choice, until a newer one is taken in.');
    expect(text).toContain(
      'Wind: within a day of issue 1.2 kn less than said on average, give or take 2.3 kn (20 times).',
    );
    expect(text).toContain(
      'Direction: 1 to 2 days on veered 9 degrees from what was said on average (1 time).',
    );
    expect(text).toContain('Seas: from 3 days on as said on average, give or take 20 % (4 times).');
    expect(text).toContain('"forecastError": {"wind":{"atIssue":2,"perDay":0.64}}');
  });

  it('Enter makes the one pointed at count, by an entry in the log; of the newest it takes the choice back', () => {
    const [, third] = update(at(SIZES[1], 'down'), { is: 'key', key: 'enter' });
    expect(third).toMatchObject([
      { do: 'save', drafts: [{ kind: 'forecast', counts: '20260203T0100Z-aaaaaaaaaaaa' }] },
    ]);
    const [, first] = update(at(SIZES[1], 'up'), { is: 'key', key: 'enter' });
    expect(first).toMatchObject([{ do: 'save', drafts: [{ counts: 'newest' }] }]);
    const [same, none] = update(at(SIZES[1]), { is: 'key', key: 'enter' });
    expect([same.notice, none]).toEqual(['it counts already', []]);
  });

  it('says what became of it', () => {
    const [model, [request]] = update(at(SIZES[1], 'up'), { is: 'key', key: 'enter' });
    if (request?.do !== 'save') throw new Error('nothing was saved');
    const { drafts } = request;
    const [saved, requests] = update(model, { is: 'saved', drafts, result: good([]) });
    expect([pageOf(saved).page, saved.notice, requests]).toEqual([
      'forecasts',
      'saved: Forecast: the newest counts again',
      [{ do: 'load' }],
    ]);
    const failed = bad({ kind: 'not saved', code: 'ENOSPC', text: '{}' });
    expect(update(model, { is: 'saved', drafts, result: failed })[0].notice).toContain('NOT SAVED');
  });

  it.each(SIZES)('keep their shape and the one pointed at in sight at $columns columns', (size) => {
    for (const keys of [[], ['down'], ['up', 'up'], ['down', 'down', 'G']]) {
      const shown = seen(at(size, ...keys));
      for (const line of shown) expect(widthOf(line)).toBe(size.columns);
      if (!keys.includes('G')) expect(shown.some((line) => line.startsWith('> '))).toBe(true);
    }
  });

  it('are told of on the weather page, with what it is doing now and what was decided', () => {
    const document = {
      ...three,
      now: {
        at: '2026-02-03T07:00:00Z',
        met: { wind: 22, gust: null, dir: 180, seas: 1.5, pressure: 1008, tendency: -4.2, squalls: null },
        said: { wind: 15, gust: 20, dir: 225, seas: null },
      },
      decision: {
        at: '2026-02-03T06:30:00Z',
        choice: 'go',
        verdict: 'hold',
        score: 71,
        text: null,
        against: true,
      },
    } as const;
    const text = flat(seen(moved(aModel({ size: { columns: 100, rows: 120 } }, document), 'w')));
    expect(text).toContain(
      'Tue 3 Feb 07:00, 40 min ago: wind 22 kn where 15 kn was forecast, from S where SW was forecast, seas 1.5 m, 1008 hPa, falling quickly.',
    );
    expect(text).toContain(
      'Tue 3 Feb 06:30: decided to go, against the verdict; the verdict was hold at 71.',
    );
    expect(text).toContain('A GRIB from Harbour Office, issued Tue 3 Feb 05:00');
    expect(text).toContain('HOW FAR OFF THEY HAVE BEEN');
  });
});
