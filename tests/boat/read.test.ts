import { describe, expect, test } from 'vitest';
import { BOAT_FILE_MOST, readBoat } from '../../source/boat/read.ts';
import { boatText, inShort, type Loose, troublesIn } from '../helpers/broken-boat.ts';

test('a sound boat file is read, with its defaults', () => {
  const read = readBoat(boatText(), 'boat.json');
  expect(read.ok && read.value.name).toBe('Sandpiper');
});

test('fields the program does not know are kept', () => {
  const text = boatText((boat) => {
    boat.colour = 'green';
    boat.fluids[0].boughtAt = { port: 'Otter Cay' };
  });
  const read = readBoat(text, 'boat.json');
  expect(read.ok && read.value).toMatchObject({ colour: 'green' });
  expect(read.ok && read.value.fluids[0]).toMatchObject({ boughtAt: { port: 'Otter Cay' } });
});

test('a byte order mark before the file, and line ends of either kind, change nothing', () => {
  expect(troublesIn(`\ufeff${boatText()}`)).toEqual([]);
  expect(troublesIn(boatText().replaceAll('\n', '\r\n'))).toEqual([]);
});

/** Each breaks a sound boat in one way, and says every trouble there must be: no fewer, and none besides. */
const broken: readonly (readonly [promise: string, change: (boat: Loose) => void, ...troubles: string[]])[] =
  [
    ['a name missing', (b) => delete b.name, 'field missing: line 1'],
    ['a name that is a number', (b) => (b.name = 7), 'wrong value: name'],
    ['an empty name', (b) => (b.name = ''), 'wrong value: name'],
    ['a format of no version', (b) => (b.format = 0), 'wrong value: format'],
    ['a crew of half a person', (b) => (b.crew = 1.5), 'wrong value: crew'],
    ['a list that is a group', (b) => (b.dated = {}), 'wrong value: dated'],
    ['an item that is a number', (b) => (b.dated[0] = 3), 'wrong value: dated[0]'],
    [
      'a fluid without marks',
      (b) => (b.fluids[2] = { id: 'water', name: 'Water' }),
      'field missing: fluids[2]',
      'field missing: fluids[2]',
    ],
    ['a number in quotes', (b) => (b.fluids[0].low = '1.1'), 'wrong value: fluids[0].low'],
    ['a level below zero', (b) => (b.fluids[0].low = -1), 'wrong value: fluids[0].low'],
    ['a low mark above full', (b) => (b.fluids[0].low = 1.4), 'out of order: fluids[0].low'],
    ['a low mark at full', (b) => (b.fluids[0].low = 1.3), 'out of order: fluids[0].low'],
    ['a reserve above full', (b) => (b.fluids[1].reserve = 250), 'out of order: fluids[1].reserve'],
    ['a way of reading nobody knows', (b) => (b.fluids[0].how = 'guage'), 'wrong value: fluids[0].how'],
    ['a fluid of an unknown engine', (b) => (b.fluids[0].engine = 'mian'), 'no such item: fluids[0].engine'],
    [
      'one unknown engine of two',
      (b) => (b.fluids[0].engine = ['main', 'port']),
      'no such item: fluids[0].engine[1]',
    ],
    ['an engine that is a number', (b) => (b.fluids[0].engine = 1), 'wrong value: fluids[0].engine'],
    ['a loss by the hour of no engine', (b) => delete b.fluids[0].engine, 'field missing: fluids[0]'],
    [
      'a stock the boat does not have',
      (b) => (b.fluids[0].stock = 'gear-oil-cna'),
      'no such item: fluids[0].stock',
    ],
    ['a stock counted in pieces', (b) => (b.fluids[0].stock = 'fuses'), 'wrong value: fluids[0].stock'],
    [
      'a tight one that strays more than a leaking one',
      (b) => (b.fluids[0].loss.perDay.wide = 0.001),
      'out of order: fluids[0].loss.perDay.sd',
    ],
    [
      'a misspelt mark',
      (b) => {
        b.fluids[0].lwo = 1.1;
        delete b.fluids[0].low;
      },
      'misspelt field: fluids[0].lwo',
    ],
    [
      'a misspelt field inside a group',
      (b) => {
        b.limits.daylight = { afterSunrize: 1 };
      },
      'misspelt field: limits.daylight.afterSunrize',
    ],
    ['a metal that is none', (b) => (b.anodes[0].metal = 'aluminum'), 'wrong value: anodes[0].metal'],
    ['an anode of an unknown spare', (b) => (b.anodes[0].spare = 'pencil'), 'no such item: anodes[0].spare'],
    [
      'an anode that unsettles no check',
      (b) => (b.anodes[0].unsettles = ['raw-water', 'raw-watre']),
      'no such item: anodes[0].unsettles[1]',
    ],
    [
      'uses neither by hour nor by day',
      (b) => (b.spares[0].expected = {}),
      'field missing: spares[0].expected',
    ],
    [
      'uses both by hour and by day',
      (b) => (b.spares[0].expected.perDay = 1),
      'wrong value: spares[0].expected',
    ],
    [
      'uses by the hour of an unknown engine',
      (b) => (b.spares[0].expected.engine = 'port'),
      'no such item: spares[0].expected.engine',
    ],
    [
      'an engine left out where there are two',
      (b) => b.engines.push({ id: 'port', name: 'Port', usualHoursPerDay: 0 }),
      'field missing: spares[0].expected',
      'field missing: services[0]',
    ],
    [
      'a service that never comes due',
      (b) => {
        delete b.services[0].everyHours;
        delete b.services[0].everyMonths;
      },
      'field missing: services[0]',
    ],
    [
      'a service with a part nobody has',
      (b) => (b.services[0].uses[0].spare = 'impeller'),
      'no such item: services[0].uses[0].spare',
    ],
    ['a least above the most', (b) => (b.checks[0].atMost = 12), 'out of order: checks[0].atLeast'],
    [
      'a number kept to by a check that asks for none',
      (b) => (b.checks[1].atLeast = 1),
      'field missing: checks[1]',
    ],
    [
      'a yes or no with a number to keep to',
      (b) => (b.checks[0].ask = 'yes-no'),
      'wrong value: checks[0].ask',
    ],
    [
      'a day that does not exist',
      (b) => (b.dated[0].expires = '2027-02-30'),
      'wrong value: dated[0].expires',
    ],
    ['a limit switched on', (b) => (b.limits.wind = true), 'wrong value: limits.wind'],
    [
      'a limit for one aboard below zero',
      (b) => (b.limits.alone = { gust: -1 }),
      'wrong value: limits.alone.gust',
    ],
    ['a latitude beyond the pole', (b) => (b.anchorages[0].at = [91, 0]), 'wrong value: anchorages[0].at[0]'],
    ['a position of one number', (b) => (b.anchorages[0].at = [41]), 'wrong value: anchorages[0].at'],
    ['a passage without legs', (b) => (b.passages[0].legs = []), 'wrong value: passages[0].legs'],
    [
      'legs that do not join',
      (b) => (b.passages[0].legs[1].from = [41.4, -30.1]),
      'legs do not join: passages[0].legs[1].from',
    ],
    [
      'motoring by an unknown engine',
      (b) => (b.passages[0].motoring.port = { mean: 0.1, sd: 0 }),
      'no such item: passages[0].motoring.port',
    ],
    ['an unknown passage planned', (b) => (b.passage = 'to-otter-key'), 'no such item: passage'],
    ['lying at an unknown anchorage', (b) => (b.anchorage = 'heron'), 'no such item: anchorage'],
    ['one id for two things', (b) => (b.dated[0].id = 'fuel'), 'id twice: dated[0].id'],
    ['an id in capitals', (b) => (b.dated[0].id = 'Old Flares'), 'wrong value: dated[0].id'],
    ['an id every object already has', (b) => (b.dated[0].id = 'constructor'), 'wrong value: dated[0].id'],
  ];

describe('a trouble is found where it lies', () => {
  test.each(broken.map((one) => [one[0], one] as const))('%s', (_, [, change, ...troubles]) => {
    expect(troublesIn(boatText(change)).map(inShort)).toEqual(troubles);
  });
});

/** The same for texts that are not JSON. */
const notJson: readonly (readonly [promise: string, text: string, ...troubles: string[]])[] = [
  ['nothing at all', '', 'not json (empty): line 1'],
  ['blanks', ' \n ', 'not json (empty): line 2'],
  ['a comment', `// mine\n${boatText()}`, 'not json (comment): line 1'],
  ['a comment left open at the very end', '{"format":1,"name":/*', 'not json (not closed): line 1'],
  ['a trailing comma', '{"format":1,"name":"x",\n}', 'not json (trailing comma): line 2'],
  ['a comma left out', '{"format":1\n"name":"x"}', 'not json (no comma): line 2'],
  ['a colon left out', '{"format" 1}', 'not json (no colon): line 1'],
  ['a value left out', '{"format":}', 'not json (no value): line 1'],
  ['two commas', '{"format":1,,"name":"x"}', 'not json (no field name): line 1'],
  ['single quotes', "{'format':1}", 'not json (other quotes): line 1'],
  ['curly quotes', '{\u201cformat\u201d:1}', 'not json (other quotes): line 1'],
  ['no quotes', '{format:1}', 'not json (symbol): line 1'],
  ['quotes left open', '{"format":1,"name":"x\n}', 'not json (text not closed): line 1'],
  ['half a file', boatText().slice(0, 300).trimEnd(), 'not json (not closed): line 18'],
  ['a number with a leading zero', '{"format":01}', 'not json (number): line 1'],
  ['a number that begins with its point', '{"format":.5}', 'not json (number): line 1'],
  ['a number that ends with its point', '{"format":1.}', 'not json (number): line 1'],
  ['a comma for the point, which reads as two things', '{"a":1,5}', 'not json (no field name): line 1'],
  ['NaN', '{"format":NaN}', 'not json (symbol): line 1'],
  ['a bad escape', '{"name":"C:\\quay"}', 'not json (escape): line 1'],
  ['a tab in a text', '{"name":"a\tb"}', 'not json (control character): line 1'],
  ['something after the end', '{"format":1,"name":"x"}\n}', 'not json (after the end): line 2'],
  ['a million brackets', '['.repeat(200_000), 'not json (too deep): line 1'],
];

describe('what is not JSON is said with its line', () => {
  test.each(notJson)('%s', (_, text, ...troubles) => {
    expect(troublesIn(text).map(inShort)).toEqual(troubles);
  });
});

describe('all at once', () => {
  test('every trouble of a file is said, in the order of its lines', () => {
    const text = boatText((boat) => {
      boat.passage = 'nowhere';
      boat.dated[0].expires = 'soon';
      boat.fluids[0].low = 9;
      boat.fluids[1].how = 'by eye';
      boat.nmae = boat.name;
      delete boat.name;
    });
    const troubles = troublesIn(text);
    expect(troubles.map(inShort)).toEqual([
      'out of order: fluids[0].low',
      'wrong value: fluids[1].how',
      'wrong value: dated[0].expires',
      'no such item: passage',
      'misspelt field: nmae',
    ]);
    const lines = troubles.map((trouble) => ('place' in trouble ? (trouble.place.line ?? 0) : 0));
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  test('a comment hides none of the troubles after it', () => {
    const text = boatText((boat) => (boat.crew = 0)).replace('"crew"', '/* two */ "crew"');
    expect(troublesIn(text).map(inShort)).toEqual(['not json (comment): line 4', 'wrong value: crew']);
  });

  test('a field written twice is said, with the line of the first', () => {
    const text = boatText().replace('"crew": 2,', '"crew": 2,\n  "crew": 3,');
    expect(troublesIn(text)).toMatchObject([
      { kind: 'field twice', field: 'crew', firstLine: 4, place: { line: 5 } },
    ]);
  });

  test('past a hundred troubles the rest are counted', () => {
    const text = boatText((boat) => {
      boat.dated = Array.from({ length: 250 }, (_, i) => ({ id: `flare-${i}`, name: 3 }));
    });
    const troubles = troublesIn(text);
    expect(troubles).toHaveLength(101);
    expect(troubles.at(-1)).toEqual({ kind: 'more troubles', file: 'boat.json', count: 150 });
  });

  test('a list of more than a thousand is one trouble', () => {
    const text = `{"format":1,"name":"x","dated":[${'{},'.repeat(1000)}{}]}`;
    expect(troublesIn(text).map(inShort)).toEqual(['wrong value: dated']);
  });
});

describe('a file of a newer version', () => {
  test('is said to be one, and nothing else is said of it', () => {
    expect(troublesIn('{"format":2,"hull":[]}')).toMatchObject([
      { kind: 'newer format', found: 2, known: 1 },
    ]);
  });
});

describe('the nearest is offered', () => {
  test.each<[string, (boat: Loose) => void, string]>([
    ['a word of the list', (b) => (b.fluids[0].how = 'guage'), '"gauge"'],
    ['a number out of its quotes', (b) => (b.fluids[0].low = '1,1'), '1.1'],
    ['true out of its quotes', (b) => (b.fluids[0].topUpUnderWay = 'True'), 'true'],
    ['an id in its form', (b) => (b.dated[0].id = 'Fl\u00e5res & smoke'), '"fla-res-smoke"'],
    ['an id the boat has', (b) => (b.anodes[0].spare = 'pencil'), 'pencils'],
    ['a passage the boat has', (b) => (b.passage = 'to-otter-key'), 'to-otter-cay'],
  ])('%s', (_, change, near) => {
    expect(troublesIn(boatText(change))).toMatchObject([{ near }]);
  });
});

describe('hostile files', () => {
  test('keys that every object already has do no harm', () => {
    const text = '{"format":1,"name":"x","__proto__":{"crew":9},"constructor":1,"prototype":2}';
    const read = readBoat(text, 'boat.json');
    expect(read.ok && read.value.crew).toBe(2);
    expect(({} as { crew?: number }).crew).toBeUndefined();
  });

  test('50 MB are refused by their size, not read', () => {
    expect(troublesIn(' '.repeat(50_000_000))).toEqual([
      { kind: 'file too large', file: 'boat.json', bytes: 50_000_000, most: BOAT_FILE_MOST },
    ]);
  });

  test('a number too large for any number is a trouble', () => {
    expect(troublesIn('{"format":1,"name":"x","crew":1e999}').map(inShort)).toEqual(['wrong value: crew']);
  });

  test('a line of a hundred thousand characters is shown only around the value', () => {
    const text = `{"format":1,"note":"${'n'.repeat(100_000)}","name":7,"more":"${'m'.repeat(1000)}"}`;
    const [trouble] = troublesIn(text);
    const excerpt = trouble && 'place' in trouble ? trouble.place.excerpt : undefined;
    expect(excerpt?.text.length).toBe(160);
    expect(excerpt?.text.slice(excerpt.from, excerpt.to)).toBe('7');
  });
});
