import { describe, expect, test } from 'vitest';
import type { Trouble } from '../../source/trouble.ts';
import { sayTrouble } from '../../source/words/troubles.ts';
import { boatText, troublesIn } from '../helpers/broken-boat.ts';
import { forecastTroubles } from '../helpers/forecast-troubles.ts';

const log = { file: 'log/k7m2q9xd.ndjson', line: 118 };
const low = {
  file: 'boat.json',
  line: 31,
  path: 'fluids[2].low',
  excerpt: { text: '      "low": 1.4, "full": 1.3', from: 13, to: 16 },
};

/** One of every kind: a kind without an example here does not compile. */
const examples: { readonly [K in Trouble['kind']]: Extract<Trouble, { kind: K }> } = {
  'no table': { kind: 'no table', item: 'flares', others: ['gear-oil', 'main'] },
  'no boat folder': { kind: 'no boat folder', folder: 'penywhin' },
  'folder not empty': { kind: 'folder not empty', folder: 'pennywhin' },
  'cannot make': { kind: 'cannot make', folder: 'pennywhin', code: 'EROFS' },
  'another boat': { kind: 'another boat', folder: 'stick', name: 'Godwit', ours: 'Whimbrel' },
  'cannot read': { kind: 'cannot read', file: 'boat.json', code: 'EACCES' },
  'cannot write': { kind: 'cannot write', file: 'boat.json', code: 'EWHAT' },
  'read only': { kind: 'read only', folder: 'pennywhin', code: 'EROFS' },
  'file too large': { kind: 'file too large', file: 'boat.json', bytes: 50_000_000, most: 250_000 },
  'not a plain file': { kind: 'not a plain file', file: 'log/k7m2q9xd.ndjson' },
  'no log': { kind: 'no log', file: 'log/k7m2q9xd.ndjson', lines: 100_000 },
  'stray file': { kind: 'stray file', file: 'log/k7m2q9xd (copy).ndjson' },
  'forecast damaged': {
    kind: 'forecast damaged',
    file: 'forecasts/20260203T0600Z-1a2b.json',
    what: 'it is not JSON',
  },
  'no place for a copy': { kind: 'no place for a copy', folder: '/media/stick', why: 'taken' },
  'not copied': { kind: 'not copied', to: '/media/stick', code: 'ENOENT' },
  'copy unsound': { kind: 'copy unsound', folder: '/media/stick/whimbrel', lacks: 3 },
  'little room': { kind: 'little room', folder: 'pennywhin', bytes: 12_300_000 },
  'disk error': { kind: 'disk error', file: 'log/k7m2q9xd.ndjson', code: 'EIO' },
  'not json': { kind: 'not json', place: { ...low, path: 'x' }, what: 'trailing comma' },
  'newer format': { kind: 'newer format', place: low, found: 3, known: 1 },
  'field missing': { kind: 'field missing', place: low, field: 'full', expected: 'a number of litres' },
  'wrong value': {
    kind: 'wrong value',
    place: low,
    value: '1.4',
    expected: 'a number of litres',
    near: '1.4',
  },
  'misspelt field': { kind: 'misspelt field', place: low, field: 'lwo', near: 'low' },
  'field twice': { kind: 'field twice', place: low, field: 'low', firstLine: 30 },
  'id twice': { kind: 'id twice', place: low, id: 'gear-oil', firstLine: 12 },
  'no such item': { kind: 'no such item', place: low, id: 'gear-ol', wants: 'fluid', near: 'gear-oil' },
  'out of order': {
    kind: 'out of order',
    place: low,
    value: 1.4,
    than: { path: 'full', value: 1.3 },
    unit: 'litres',
    remedy: 0.9,
  },
  'legs do not join': { kind: 'legs do not join', place: low, gapNm: 4.52 },
  'more troubles': { kind: 'more troubles', file: 'boat.json', count: 23 },
  'line cut off': { kind: 'line cut off', place: log, text: '{"v":1,"id":"k7m2q9xd-118","ki' },
  'line damaged': { kind: 'line damaged', place: log, how: 'checksum', text: '{"v":1}' },
  'line edited': { kind: 'line edited', place: log, text: '{"v":1}' },
  'lines missing': {
    kind: 'lines missing',
    place: log,
    writer: 'k7m2q9xd',
    from: 100,
    to: 120,
    why: 'older copy',
  },
  'chain broken': { kind: 'chain broken', place: log, writer: 'k7m2q9xd', number: 118 },
  'line out of place': { kind: 'line out of place', place: log, id: 'k7m2q9xd-3', how: 'twice' },
  'same id twice': { kind: 'same id twice', place: log, id: 'k7m2q9xd-118' },
  'count leap': { kind: 'count leap', place: log, lc: 9e9 },
  'more damage': { kind: 'more damage', count: 1 },
  'newer entries': { kind: 'newer entries', count: 3 },
  'unknown item': {
    kind: 'unknown item',
    entry: 'k7m2q9xd-9',
    at: '2026-02-03T07:42:00Z',
    item: 'gear-ol',
    near: 'gear-oil',
  },
  'odd reading': {
    kind: 'odd reading',
    entry: 'k7m2q9xd-9',
    at: '2026-02-03T07:42:00Z',
    item: 'main',
    value: 3400,
    unit: 'h',
    than: 3412.6,
    why: 'meter back',
  },
  'new size unknown': {
    kind: 'new size unknown',
    entry: 'k7m2q9xd-9',
    at: '2026-02-03T07:42:00Z',
    item: 'pencil',
    field: 'diameterMm',
  },
  clock: {
    kind: 'clock',
    entry: 'k7m2q9xd-9',
    at: '2026-02-03T07:42:00Z',
    rec: '2025-02-03T07:43:01.220Z',
    why: 'went back',
  },
  'unknown word': { kind: 'unknown word', word: 'verdct', what: 'command', near: 'verdict' },
  wanting: { kind: 'wanting', what: 'the engine', example: 'engine=main' },
  'not understood': {
    kind: 'not understood',
    field: 'amount',
    text: '3 gal',
    expected: 'us gal or imp gal',
    example: '3 us gal or 3 imp gal',
  },
  'wrong entry': {
    kind: 'wrong entry',
    line: 3,
    field: 'amount',
    value: 'lots',
    expected: 'a number of litres',
  },
  'in doubt': {
    kind: 'in doubt',
    doubt: {
      kind: 'odd reading',
      entry: '',
      at: '2026-02-03T07:42:00Z',
      item: 'main',
      value: 3400,
      unit: 'h',
      than: 3412.6,
      why: 'meter back',
    },
  },
  'not saved': { kind: 'not saved', code: 'ENOSPC', text: 'topup gear-oil 0.4 L, now at the full mark' },
  'changed meanwhile': { kind: 'changed meanwhile', id: 'gear-oil', field: 'low' },
  'still named': {
    kind: 'still named',
    name: 'Impeller',
    by: [
      { name: 'Impeller change', field: 'uses' },
      { name: 'Spare impeller', field: 'stock' },
    ],
  },
  ...forecastTroubles,
};
const all = Object.entries(examples).map(
  ([kind, trouble]) => [kind, sayTrouble(trouble as Trouble)] as const,
);

describe('every trouble', () => {
  test.each(all)('%s is said without words that blame or plead', (_, words) => {
    expect(words).not.toMatch(/invalid|illegal|failed to|please|simply|error:/i);
  });

  test.each(all)('%s begins in lower case, and says what would be right or what to try', (_, words) => {
    const [title = '', ...rest] = words.split('\n');
    expect(title).toMatch(/^([a-z0-9"]|NOT SAVED)/);
    expect(title).not.toMatch(/[.!]$/);
    expect(rest.length).toBeGreaterThan(0);
    expect(words).not.toMatch(/undefined|NaN|\[object|\n\n|\n$/);
  });
});

test('a mark out of order reads as a page of the manual would say it', () => {
  expect(sayTrouble(examples['out of order'])).toBe(
    [
      'boat.json, line 31: fluids[2].low is 1.4, above full (1.3)',
      '   "low": 1.4, "full": 1.3',
      '          ^^^',
      'The low mark must lie below the full mark, both in litres.',
      'Try: "low": 0.9',
    ].join('\n'),
  );
});

describe('whole texts', () => {
  test.each<[string, (boat: never) => void, string[]]>([
    [
      'a misspelt word of a list',
      (boat: { fluids: { how: string }[] }) => {
        boat.fluids[0]!.how = 'guage';
      },
      [
        'boat.json, line 21: fluids[0].how is "guage"',
        '   "how": "guage",',
        '          ^^^^^^^',
        '"how" takes one of "stopped-cold", "stopped-hot", "running-hot", "stick-resting", "stick-screwed", "gauge", "sounding".',
        'Try: "how": "gauge"',
      ],
    ],
    [
      'a field left out',
      (boat: { fluids: { full?: number }[] }) => {
        delete boat.fluids[0]!.full;
      },
      [
        'boat.json, line 14: fluids[0].full is missing',
        '   "id": "gear-oil",',
        '         ^^^^^^^^^^',
        '"full" takes a number of litres, 0 to 1000000.',
      ],
    ],
    [
      'an item the boat does not have',
      (boat: { anodes: { unsettles: string[] }[] }) => {
        boat.anodes[0]!.unsettles = ['raw-watre'];
      },
      [
        'boat.json, line 87: anodes[0].unsettles[0] names "raw-watre", and the boat has no check with that id',
        '   "raw-watre"',
        '   ^^^^^^^^^^^',
        'It takes the id of a check in this file.',
        'Try: "raw-water"',
      ],
    ],
    [
      'a misspelt field',
      (boat: { dated: { expries?: string }[] }) => {
        boat.dated[0] = { id: 'flares', name: 'Flares', expries: '2027-03-31' } as never;
      },
      [
        'boat.json, line 163: dated[0].expries is not a field of the boat file',
        '   "expries": "2027-03-31"',
        '   ^^^^^^^^^',
        'The nearest is "expires". A field of your own takes a name less like it than "expries".',
        'Try: "expires"',
      ],
    ],
  ])('%s', (_, change, lines) => {
    expect(troublesIn(boatText(change as never)).map(sayTrouble)).toEqual([lines.join('\n')]);
  });

  test('an empty file', () => {
    expect(troublesIn('').map(sayTrouble)).toEqual([
      [
        'boat.json, line 1: the file is empty',
        'A boat file holds at least the format and the name of the boat.',
        'Try: { "format": 1, "name": "..." }',
      ].join('\n'),
    ]);
  });

  test('the last line of the log cut off', () => {
    expect(sayTrouble(examples['line cut off'])).toBe(
      [
        'log/k7m2q9xd.ndjson, line 118: the last line was cut off, probably by power loss; it had not been confirmed',
        '   {"v":1,"id":"k7m2q9xd-118","ki',
        'Nothing before it was lost.',
        'Try: record it again if it did happen',
      ].join('\n'),
    );
  });

  test('an older copy of the log', () => {
    expect(sayTrouble(examples['lines missing'])).toBe(
      [
        'log/k7m2q9xd.ndjson, line 118: an older copy was put back: entries 100 to 120 of k7m2q9xd are missing here',
        'What they said is not in this answer. Another laptop or a backup may still have them.',
        'Try: hoveshort merge <folder of the other copy>',
      ].join('\n'),
    );
  });

  test('an entry that could not be saved is shown, to be written on paper', () => {
    expect(sayTrouble(examples['not saved'])).toBe(
      [
        'NOT SAVED: the disk is full (ENOSPC)',
        '   topup gear-oil 0.4 L, now at the full mark',
        'Nothing of it is in the log. Write it on paper until it can be saved.',
      ].join('\n'),
    );
  });

  test('a command nobody knows', () => {
    expect(sayTrouble(examples['unknown word'])).toBe('there is no command "verdct"\nTry: verdict');
  });

  test('an amount that could be two', () => {
    expect(sayTrouble(examples['not understood'])).toBe(
      [
        'amount: "3 gal" is not understood',
        '"amount" takes us gal or imp gal.',
        'Try: 3 us gal or 3 imp gal',
      ].join('\n'),
    );
  });
});

describe('the mark under the value', () => {
  test('stands under it also behind wide characters', () => {
    const excerpt = { text: '"name": "燈台", "crew": 0', from: 22, to: 23 };
    const place = { file: 'boat.json', line: 1, path: 'crew', excerpt };
    const [, line = '', carets = ''] = sayTrouble({ ...examples['wrong value'], place }).split('\n');
    expect(line.indexOf('0')).toBe(3 + 22);
    // Two characters of two columns each stand before it.
    expect(carets.indexOf('^')).toBe(3 + 22 + 2);
  });

  test('is a single one where something is missing at the end of a line', () => {
    const [, , carets] = sayTrouble(troublesIn('{"format":')[0]!).split('\n');
    expect(carets?.trim()).toBe('^');
  });
});

test('nothing hostile in a file name, a value or a line reaches the screen', () => {
  const hostile = '\u001b[2J\u202e\u0007\n\u009b31m';
  const words = sayTrouble({
    kind: 'wrong value',
    value: hostile,
    expected: 'a number of litres',
    place: {
      file: `${hostile}.json`,
      line: 1,
      path: hostile,
      excerpt: { text: `"low": "${hostile}"`, from: 7, to: 20 },
    },
  });
  expect(words).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  expect(words.split('\n')).toHaveLength(4);
});
