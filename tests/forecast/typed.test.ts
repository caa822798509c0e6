import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Given } from '../../source/forecast/content.ts';
import { dayRows } from '../../source/forecast/day-rows.ts';
import { readTyped } from '../../source/forecast/typed.ts';

const now = Date.parse('2026-02-03T13:10Z');
const given: Given = {
  now,
  timeZone: 'Europe/London',
  issuedAt: Date.parse('2026-02-03T11:30Z'),
  bare: { wind: 'kn', seas: 'ft' },
  place: 'Aster',
};
const feet = (...heights: readonly number[]) => heights.map((height) => expect.closeTo(height * 0.3048, 6));

function contentOf(rows: readonly string[], change: Partial<Given> = {}) {
  const read = readTyped(rows, { ...given, ...change });
  if (!read.ok || !('content' in read.value)) throw new Error(JSON.stringify(read));
  return read.value.content;
}
const stepOf = (row: string, change: Partial<Given> = {}) => contentOf([row], change).places[0]!.steps[0]!;

describe('rows are labelled from the clock', () => {
  test.each([
    [
      '2026-02-03T13:10Z',
      ['rest of today', 'tonight', 'tomorrow', 'tomorrow night', 'Thursday', 'Thursday night'],
    ],
    ['2026-02-03T20:00Z', ['tonight', 'tomorrow', 'tomorrow night', 'Thursday']],
    ['2026-02-03T02:00Z', ['rest of the night', 'today', 'tonight', 'tomorrow']],
    ['2026-02-03T17:30Z', ['tonight', 'tomorrow']],
    ['2026-02-03T05:30Z', ['today', 'tonight']],
  ])('%s', (at, labels) => {
    const rows = dayRows(Date.parse(at), 'Europe/London', labels.length);
    expect(rows.map(({ label }) => label)).toEqual(labels);
    expect(rows[0]?.from).toBe(Date.parse(at));
    expect(rows.slice(1).every(({ from }, i) => from === rows[i]?.to)).toBe(true);
  });

  test('days and nights change at six by the clocks aboard, also when the clocks change', () => {
    const rows = dayRows(Date.parse('2026-03-28T20:00Z'), 'Europe/London', 3).map(({ to }) =>
      new Date(to).toISOString(),
    );
    expect(rows).toEqual([
      '2026-03-29T05:00:00.000Z',
      '2026-03-29T17:00:00.000Z',
      '2026-03-30T05:00:00.000Z',
    ]);
  });
});

describe('a row', () => {
  test.each([
    ['se 15-20 g28 4-6 7s', { dir: 135, wind: [15, 20], gust: 28, seas: feet(4, 6), period: 7 }],
    ['f5-6 sw 2.5m', { dir: 225, wind: [17, 27], gust: null, seas: [2.5, 2.5], period: null }],
    ['nnw 10 2', { dir: 337.5, wind: [10, 10], seas: feet(2, 2) }],
    [
      'SE 15 to 20 kt gusts 28, 4 to 6 ft, 7 s',
      { dir: 135, wind: [15, 20], gust: 28, seas: feet(4, 6), period: 7 },
    ],
    ['se 15-20g28 2m', { wind: [15, 20], gust: 28, seas: [2, 2] }],
    ['w to 20 <5', { wind: [20, 20], seas: feet(5, 5) }],
    ['var <10 1012hpa isolated', { dir: null, wind: [10, 10], pressure: 1012, squalls: 'isolated' }],
    ['s-sw 8m/s 1,5m', { dir: 180, otherDirs: [225], wind: [15.5507559, 15.5507559], seas: [1.5, 1.5] }],
    ['225° 12 squall-line', { dir: 225, squalls: 'line' }],
    ['2m', { wind: null, seas: [2, 2] }],
    [
      'SE winds 15 to 20 knots, gusts 28. Seas 4 to 6 feet.',
      { dir: 135, wind: [15, 20], gust: 28, seas: feet(4, 6) },
    ],
    ['southwest 5 to 7, perhaps gale 8', { dir: 225, wind: [34, 40] }],
  ])('%s', (row, expected) => {
    expect(stepOf(row)).toMatchObject({ ...expected, label: 'rest of today', how: 'typed' });
  });

  test('what was not said stays missing, never 0', () => {
    expect(stepOf('se 15')).toMatchObject({
      gust: null,
      seas: null,
      period: null,
      pressure: null,
      squalls: null,
    });
  });

  test('= is as above, with what differs behind it, and . is not heard', () => {
    const { places } = contentOf(['se 15-20 4', '=', '.', '= g30']);
    expect(places[0]).toMatchObject({ place: 'Aster' });
    expect(places[0]?.steps.map(({ label, wind, gust }) => [label, wind, gust])).toEqual([
      ['rest of today', [15, 20], null],
      ['tonight', [15, 20], null],
      ['tomorrow night', [15, 20], 30],
    ]);
  });

  test('a bare height is in the unit of whoever types', () => {
    expect(stepOf('se 15 2', { bare: { wind: 'kn', seas: 'm' } }).seas).toEqual([2, 2]);
    expect(stepOf('se 15 2', { bare: { wind: 'kn', seas: 'ft' } }).seas).toEqual(feet(2, 2));
  });

  test('bare wind and gusts are in the unit preferred, unless a unit stands beside either', () => {
    const bare = { wind: 'm/s', seas: 'm' } as const;
    const knots = (metresASecond: number) => expect.closeTo((metresASecond * 3.6) / 1.852, 6);
    const inMetres = { wind: [knots(8), knots(10)], gust: knots(14) };
    expect(stepOf('se 8-10 g14 2', { bare })).toMatchObject(inMetres);
    expect(stepOf('se 8-10g14 2', { bare })).toMatchObject(inMetres);
    expect(stepOf('se 8-10 m/s g14 2')).toMatchObject(inMetres);
    expect(stepOf('se 15-20kt g28 2', { bare })).toMatchObject({ wind: [15, 20], gust: 28 });
    expect(stepOf('g28kt se 15-20 2', { bare })).toMatchObject({ wind: [15, 20], gust: 28 });
    expect(stepOf('winds southeast 15 to 20 gusting to 28', { bare })).toMatchObject({
      wind: [15, 20],
      gust: 28,
    });
  });
});

describe('a row that cannot be so is warned of, not refused', () => {
  const kinds = (rows: readonly string[], change: Partial<Given> = {}) =>
    contentOf(rows, change)
      .problems.filter(({ kind }) => kind !== 'no gusts')
      .map(({ kind, where }) => `${where}: ${kind}`);

  test.each([
    [['se 20 g15 4'], 'rest of today: gust below wind'],
    [['se 15-20 g18 4'], 'rest of today: gust below wind'],
    [['se 25-15 4'], 'rest of today: range backwards'],
    [['se 120 4'], 'rest of today: very strong wind'],
    [['se 40 60'], 'rest of today: very high seas'],
    [['se 10 2', 'se 40 2'], 'tonight: sudden change'],
  ])('%j: %s', (rows, problem) => {
    expect(kinds(rows)).toEqual([problem]);
  });

  test.each([
    ['se 15 8', ['rest of today: perhaps feet']],
    ['se 15-20 4-6 7s', ['rest of today: perhaps feet']],
    ['se 15 8m', []],
    ['se 15 2-3 7s', []],
    ['se 40 6 11s', []],
  ])('%s typed in metres: %j', (row, problems) => {
    expect(kinds([row], { bare: { wind: 'kn', seas: 'm' } })).toEqual(problems);
  });

  test('missing gusts and seas are said', () => {
    expect(contentOf(['se 15']).problems).toEqual([
      { kind: 'no seas', where: 'rest of today' },
      { kind: 'no gusts', where: '' },
    ]);
  });
});

describe('what cannot be taken', () => {
  test.each<[readonly string[], object]>([
    [['se 15 nw 20 4'], { kind: 'row says two', row: 1, what: 'direction', first: 'se', second: 'nw' }],
    [['se f5 20kt'], { kind: 'row says two', row: 1, what: 'wind', first: 'f5', second: '20kt' }],
    [['se 15g25 g30'], { kind: 'row says two', row: 1, what: 'gust', first: 'g25', second: 'g30' }],
    [['se 15 4ft 2m'], { kind: 'row says two', row: 1, what: 'seas', first: '4ft', second: '2m' }],
    [['='], { kind: 'nothing above', row: 1 }],
    [['se 15', 'se xx'], { kind: 'row not understood', row: 2, word: 'xx' }],
    [['se f13'], { kind: 'row not understood', row: 1, word: 'f13' }],
    [['se 999'], { kind: 'row not understood', row: 1, word: '999' }],
    [['.', ''], { kind: 'forecast empty' }],
    [[], { kind: 'forecast empty' }],
    [Array.from({ length: 21 }, () => 'se 15'), { kind: 'too many rows', rows: 21 }],
  ])('%j', (rows, trouble) => {
    expect(readTyped(rows, given)).toMatchObject({ ok: false, troubles: [trouble] });
  });

  test('all rows in trouble are told at once', () => {
    const read = readTyped(['se xx', 'se 15', 'se 15 20 30'], given);
    expect(read.ok ? [] : read.troubles.map((trouble) => 'row' in trouble && trouble.row)).toEqual([1, 3]);
  });

  test('a direction whose letters differ by language is asked about', () => {
    expect(readTyped(['so 15', 'o 10'], given)).toEqual({
      ok: true,
      value: {
        asks: [
          { what: 'direction', row: 1, text: 'so', choices: ['se', 'sw'] },
          { what: 'direction', row: 2, text: 'o', choices: ['e', 'w'] },
        ],
      },
    });
  });

  test('the time of issue is asked where it is not given', () => {
    expect(readTyped(['se 15'], { ...given, issuedAt: undefined })).toEqual({
      ok: true,
      value: { asks: [{ what: 'issued' }] },
    });
  });
});

test('whatever is typed, nothing is thrown, and nothing is wind that no wind is', () => {
  const words = 'se so var 15 15-20 20-15 999 g28 g 4ft 7s = . f5 f5-6 f13 1012hpa to < - winds , ; kt'.split(
    ' ',
  );
  const row = fc
    .array(fc.oneof(fc.constantFrom(...words), fc.string({ maxLength: 8 })), { maxLength: 8 })
    .map((parts) => parts.join(' '));
  fc.assert(
    fc.property(fc.array(row, { maxLength: 5 }), (rows) => {
      const read = readTyped(rows, given);
      if (!read.ok || !('content' in read.value)) return;
      for (const { wind } of read.value.content.places[0]?.steps ?? [])
        if (wind) expect(wind[0] <= wind[1] && wind[1] <= 250).toBe(true);
    }),
    { seed: 3, numRuns: 300 },
  );
});
