import { describe, expect, test } from 'vitest';
import { bulletinZones, readBulletin } from '../../../source/forecast/bulletin/bulletin.ts';
import { aGiven, COASTAL, contentOf } from '../../helpers/a-bulletin.ts';

const now = Date.parse('2026-02-03T06:00Z');

const AREAS = `Forecast for the sea areas issued by the Harbour Office at 0505 UTC on Tuesday 3 February 2026
For the period 0600 UTC to 0600 UTC

There are warnings of gales in Aster.

General synopsis: low 985 moving northeast

Aster, Bell Rock
Southwest 5 to 7, perhaps gale 8 later. Moderate or rough. Rain. Moderate or good.

Harrow: Variable 3 becoming south 4 or 5. Slight. Fair. Good. Outlook: northwest 6. Rough.
`;

const navtex = (body: string, header = 'GE41') => `ZCZC ${header}\n${body}\nNNNN\n`;

describe('areas in Beaufort forces', () => {
  const content = contentOf(AREAS, { now, zones: ['ASTER', 'HARROW'] });

  test('are named, and read as winds and sea states', () => {
    expect(bulletinZones(AREAS).map(({ id }) => id)).toEqual(['ASTER', 'BELL ROCK', 'HARROW']);
    expect(content.places).toMatchObject([
      {
        place: 'ASTER',
        steps: [
          {
            from: '2026-02-03T05:05:00.000Z',
            to: '2026-02-04T06:00:00.000Z',
            wind: [34, 40],
            dir: 225,
            seas: [1.25, 4],
          },
        ],
      },
      {
        place: 'HARROW',
        steps: [
          { wind: [11, 21], dir: 180, otherDirs: [null], seas: [0.5, 1.25] },
          {
            label: 'HARROW OUTLOOK',
            from: '2026-02-04T06:00:00.000Z',
            wind: [22, 27],
            dir: 315,
            seas: [2.5, 4],
          },
        ],
      },
    ]);
  });

  test('have the warnings that name them', () => {
    expect(content.places.map(({ headlines }) => headlines.map(({ about }) => about))).toEqual([
      ['gale'],
      [],
    ]);
    const everywhere = contentOf(AREAS.replace('in Aster.', 'in all areas.'), { now, zones: ['HARROW'] });
    expect(everywhere.places[0]?.headlines).toMatchObject([{ about: 'gale' }]);
  });

  test('without hours are taken for a day from the issue, and that is said', () => {
    const untimed = contentOf(AREAS.replace(/For the period.*/, ''), { now, zones: ['Bell Rock'] });
    expect(untimed.places[0]?.steps[0]).toMatchObject({
      from: '2026-02-03T05:05:00.000Z',
      to: '2026-02-04T05:05:00.000Z',
    });
    expect(untimed.problems).toContainEqual({ kind: 'hours taken', where: 'ASTER' });
  });

  test('of the British shipping forecast are told apart without commas between them', () => {
    const text =
      'Issued at 0505 UTC on Tuesday 3 February 2026 for the next 24 hours\n\nThames Dover North Utsire Southeast Iceland\nSouthwest 5. Slight. Fair. Good.\n';
    expect(bulletinZones(text).map(({ id }) => id)).toEqual([
      'THAMES',
      'DOVER',
      'NORTH UTSIRE',
      'SOUTHEAST ICELAND',
    ]);
  });
});

describe('a NAVTEX frame', () => {
  test('of a forecast is opened, and its station named', () => {
    const content = contentOf(navtex(AREAS), { now, zones: ['ASTER'] });
    expect([content.issuer, content.places[0]?.steps[0]?.wind]).toEqual(['NAVTEX station G', [34, 40]]);
    expect(contentOf(navtex(COASTAL), { zones: ['XXZ120'] }).places[0]?.steps).toHaveLength(1);
  });

  test('of a weather warning beside it gives its headline', () => {
    const warned = contentOf(
      navtex('Harbour Office gale warning. Aster southwest gale 8.', 'GB12') + navtex(AREAS),
      { now, zones: ['HARROW'] },
    );
    expect(warned.places[0]?.headlines.map(({ text }) => text)).toContain('Harbour Office gale warning');
  });

  test.each([
    ['GA09', 'a navigational warning'],
    ['XZ28', 'no message on hand'],
    ['GQ11', 'a message of subject Q'],
  ])('%s is %s, no forecast', (header, subject) => {
    expect(readBulletin(navtex('NW 5', header), aGiven())).toEqual({
      ok: false,
      troubles: [{ kind: 'not a forecast', subjects: [subject] }],
    });
  });

  test('without its NNNN is said to be cut short, and with stars in it garbled; no star is filled in', () => {
    const text = navtex(AREAS.replace('5 to 7, perhaps gale 8', '5 to * perhaps gal* 8'), 'GE41').replace(
      'NNNN',
      '',
    );
    const { places, problems, notRead } = contentOf(text, { now, zones: ['ASTER', 'HARROW'] });
    expect(problems.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['garbled', 'cut short']));
    expect(places[0]?.steps[0]?.wind).not.toEqual([17, 21]);
    expect(notRead.some(({ text: left }) => left.includes('5 TO #'))).toBe(true);
  });
});

describe('high seas', () => {
  const HIGH = `FZXX01 KXXX 150956
HSFXX1

HIGH SEAS FORECAST FOR INVENTED WATERS
1030 UTC TUE FEB 3 2026

NORTH WATER WEST OF 35W

SYNOPSIS VALID 0600 UTC FEB 3.
24 HOUR FORECAST VALID 0600 UTC FEB 4.
48 HOUR FORECAST VALID 0600 UTC FEB 5.

.WARNINGS.

...GALE WARNING...
.FROM 48N TO 55N E OF 41W NE WINDS 25 TO 35 KT. SEAS 3.5 TO
5 M.
.24 HOUR FORECAST CONDITIONS DIMINISHED.

.SYNOPSIS AND FORECAST.

.REMAINDER OF AREA WINDS 20 KT OR LESS. SEAS LESS THAN 2.5 M.
.48 HOUR FORECAST WINDS TO 25 KT. SEAS TO 3 M.

$$
`;

  test('come to the worst of all systems in each 24 hours, in the unit they give', () => {
    const { places, notRead, problems } = contentOf(HIGH, { now });
    expect(places).toMatchObject([
      {
        place: 'NORTH WATER WEST OF 35W',
        headlines: [{ text: 'GALE WARNING', about: 'gale', from: null, to: null }],
        steps: [
          { from: '2026-02-03T06:00:00.000Z', wind: [25, 35], dir: 45, seas: [3.5, 5] },
          { to: '2026-02-05T06:00:00.000Z', wind: [25, 25], seas: [3, 3] },
        ],
      },
    ]);
    expect(notRead).toEqual([]);
    expect(problems).toContainEqual({ kind: 'worst of a wide area', where: 'NORTH WATER WEST OF 35W' });
  });
});
