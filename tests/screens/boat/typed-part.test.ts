import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { findNodeAtLocation, parseTree } from 'jsonc-parser';
import { describe, expect, it } from 'vitest';
import { changedText, changedValue } from '../../../source/boat/change.ts';
import { fieldsOf } from '../../../source/boat/part-fields.ts';
import { isList, type PartKind, placeOf, valueAt } from '../../../source/boat/parts.ts';
import { readBoat } from '../../../source/boat/read.ts';
import { askOf } from '../../../source/screens/boat/boat-item-page.ts';
import { type BoatItemPage, partsOf, rowsOf } from '../../../source/screens/boat/part.ts';
import { typedPart } from '../../../source/screens/boat/typed-part.ts';
import { fieldWith } from '../../../source/screens/field.ts';
import { valueFrom } from '../../../source/words/part-texts.ts';
import { sandpiper } from '../../helpers/a-boat.ts';

/** The boat with a second of what others name, and fields of the owner's own wherever there can be any. */
const OWN = JSON.stringify(
  withOwn(
    {
      ...sandpiper,
      engines: [...sandpiper.engines, { id: 'wing', name: 'Wing engine', usualHoursPerDay: 0.1 }],
      spares: [
        { ...sandpiper.spares[0], expected: { perEngineHour: 0.002, engine: 'main' } },
        ...sandpiper.spares.slice(1),
        { id: 'oil-can', name: 'Engine oil', unit: 'L' },
      ],
      services: sandpiper.services.map((service) => ({ ...service, engine: 'main' })),
      limits: { ...sandpiper.limits, alone: { wind: 15 } },
      anchorages: [...sandpiper.anchorages, { id: 'otter-cay', name: 'Otter Cay', at: [41.9, -29.5] }],
      passages: [...sandpiper.passages, { ...sandpiper.passages[0], id: 'again', name: 'The same again' }],
    },
    '',
  ),
  null,
  2,
);
const boat = opened(OWN);

function withOwn(value: unknown, where: string): unknown {
  if (Array.isArray(value)) return value.map((one, at) => withOwn(one, `${where}.${at}`));
  if (typeof value !== 'object' || value === null || where.endsWith('.motoring')) return value;
  const inner = Object.entries(value).map(([name, one]) => [name, withOwn(one, `${where}.${name}`)]);
  return { ...Object.fromEntries(inner), ours: `own${where}` };
}

function opened(text: string) {
  const read = readBoat(text, 'boat.json');
  if (!read.ok) throw new Error(JSON.stringify(read.troubles));
  return read.value;
}

type Draft = Parameters<typeof typedPart>[0];

/** A part with some rows typed anew, by their names. */
function draftOf(kind: PartKind, id: string | null, typed: { readonly [row: string]: string }): Draft {
  const { rows, texts, before } = rowsOf(boat, kind, id);
  const names = rows.map((_, at) => askOf(rows, at));
  for (const name of Object.keys(typed)) expect(names).toContain(name);
  const fields = texts.map((text, at) => fieldWith(typed[names[at]!] ?? text));
  const how: BoatItemPage['how'] = isList(kind) && id === null ? 'add' : 'change';
  return { kind, id, how, of: boat, rows, before, fields };
}

/** One of these can stand in any row there is. */
const TEXTS = [
  ...[
    '0.5',
    '1',
    '3',
    '12',
    '25',
    '95',
    'yes',
    'no',
    'vital',
    'minor',
    'zinc',
    'aluminium',
    'salt',
    'fresh',
    'each',
    'kg',
  ],
  ...[
    'number',
    'running',
    'sounding',
    'watch',
    'stop',
    '2029-01-01',
    'off',
    'wing',
    'oil-can',
    'pencils',
    'house-bank',
  ],
  ...[
    'fuses 3, impellers',
    '41.3 -30.2',
    '41 18N 30 12W, 7 nm, Here',
    '120-230 20 kn',
    '0.5 1',
    'again',
    'Otter Cay',
  ],
];

/** What must stand beside a row, so that anything can in it. */
const BESIDE: readonly (readonly [row: RegExp, beside: { readonly [row: string]: string }])[] = [
  [/^loss running/u, { engine: 'main', 'loss running: usual?': '0.1', 'loss running: on a bad day?': '30' }],
  [/^loss lying/u, { 'loss lying: usual?': '0.1', 'loss lying: on a bad day?': '30' }],
  [/^motoring, wing/u, { 'motoring, wing: usual?': '0.1', 'motoring, wing: on a bad day?': '0.6' }],
  [
    /^expected, (weight|engine)$/u,
    { 'expected, per engine hour': '0.003', 'expected, engine': 'main', 'expected, per day': '' },
  ],
  [/^expected, per engine hour$/u, { 'expected, engine': 'main', 'expected, per day': '' }],
  [/^expected, per day$/u, { 'expected, per engine hour': '' }],
  [/^at (least|most)$/u, { ask: 'number' }],
  [/^(ask|unit)$/u, { 'at least': '' }],
];

describe('every row of every kind of part', () => {
  const firsts = partsOf(boat).filter(({ kind }, at, all) => kind !== all[at - 1]?.kind);
  const rows = firsts.flatMap(({ kind, id }) => {
    const part = rowsOf(boat, kind, id);
    return part.rows.map((row, at) => ({ kind, id, row: askOf(part.rows, at), at, is: row.holds.is }));
  });

  it.each(rows)('$kind $id: $row takes a value, and all else keeps its own', ({ kind, id, row, at, is }) => {
    const beside = Object.assign({}, ...BESIDE.filter(([of]) => of.test(row)).map(([, rest]) => rest));
    const known = new Set(rows.filter((one) => one.kind === kind && one.id === id).map((one) => one.row));
    const draft = draftOf(
      kind,
      id,
      Object.fromEntries(Object.entries<string>(beside).filter(([name]) => known.has(name))),
    );
    const found = TEXTS.map((text) => ({ ...draft, fields: draft.fields.with(at, fieldWith(text)) }))
      .map((typed) => typedPart(typed))
      .find(({ change, wrong }) => wrong.length === 0 && change.set.length > 0);
    if (!found) throw new Error('nothing can stand there');
    const after = changedText(OWN, found.change);
    expect(readBoat(after, 'boat.json').ok).toBe(true);
    expect(JSON.parse(after)).toEqual(changedValue(JSON.parse(OWN), found.change));
    if (is === 'parts' || is === 'sectors' || row.startsWith('expected')) return;
    for (const [own] of OWN.matchAll(/"own[^"]*"/gu)) expect(after).toContain(own);
  });

  it('whatever is typed together, the rest of the file keeps its bytes', () => {
    const text = readFileSync('sample-boat/boat.json', 'utf8');
    const sample = opened(text);
    const parts = partsOf(sample);
    const typing = fc.record({
      part: fc.nat(parts.length - 1),
      rows: fc.array(fc.tuple(fc.nat(40), fc.nat(40)), { minLength: 1, maxLength: 3 }),
    });
    let changes = 0;
    fc.assert(
      fc.property(typing, (given) => {
        const { kind, id } = parts[given.part]!;
        const { rows, texts, before } = rowsOf(sample, kind, id);
        const fitting = (at: number) =>
          ['', ...TEXTS, 'main'].filter((put) => put === '' || valueFrom(put, rows[at]!, sample).ok);
        const typed = new Map(
          given.rows.map(([row, put]) => {
            const at = row % rows.length;
            return [at, fitting(at)[put % fitting(at).length]!];
          }),
        );
        const fields = texts.map((shown, at) => fieldWith(typed.get(at) ?? shown));
        const { change, wrong } = typedPart({ kind, id, how: 'change', of: sample, rows, before, fields });
        if (wrong.length > 0 || change.set.length === 0) return;
        changes += 1;
        const after = changedText(text, change);
        expect(readBoat(after, 'boat.json').ok).toBe(true);
        expect(JSON.parse(after)).toEqual(changedValue(JSON.parse(text), change));
        if (kind === 'boat') return;
        const part = findNodeAtLocation(parseTree(text)!, [...placeOf(sample, kind, id)!])!;
        expect(after.startsWith(text.slice(0, part.offset))).toBe(true);
        expect(after.endsWith(text.slice(part.offset + part.length))).toBe(true);
      }),
      { numRuns: 150 },
    );
    expect(changes).toBeGreaterThan(50);
  });

  it('typed as it is shown is no change', () => {
    for (const { kind, id } of partsOf(boat)) {
      const { change, wrong } = typedPart(draftOf(kind, id, {}));
      expect([kind, change.set, wrong]).toEqual([kind, [], []]);
    }
  });

  it('can be read as it is shown, give or take what is rounded', () => {
    for (const { kind, id } of partsOf(boat)) {
      const draft = draftOf(kind, id, {});
      const anew = { ...draft, before: draft.before.map((text) => (text === '' ? '' : `${text}!`)) };
      const { wrong } = typedPart(anew);
      expect([kind, id, wrong]).toEqual([kind, id, []]);
    }
  });
});

/** What is wanted of one that is added, by the rows' names. */
const ADDED: { readonly [kind in PartKind]?: { readonly [row: string]: string } } = {
  engines: { name: 'Wing', 'usual hours per day': '0.2' },
  fluids: { name: 'Gear oil', low: '1', full: '1.2' },
  anodes: { name: 'Hull', metal: 'zinc', water: 'salt', 'usual life days': '300' },
  spares: { name: 'Hose' },
  services: { name: 'Hoses', 'every months': '60', uses: 'fuses 2', unsettles: 'raw-water' },
  checks: { name: 'Lamps' },
  dated: { name: 'Raft' },
  anchorages: { name: 'Otter Cay', at: '41 54N 29 30W', sectors: 'n-e 12 kn' },
  passages: { name: 'Back', from: '41.9 -29.5', 'leg 1, to': 'Heron Bight', 'speed: usual?': '5' },
};

describe('another one', () => {
  it.each(Object.entries(ADDED))('of %s is written with what was typed, under a free id', (kind, typed) => {
    const { change, wrong } = typedPart(draftOf(kind as PartKind, null, typed));
    expect(wrong).toEqual([]);
    const text = changedText(OWN, change);
    const after = opened(text);
    const item = valueAt(after, placeOf(after, change.kind, change.id)!);
    expect(item).toMatchObject({ name: typed.name });
    expect(change.id).toMatch(/^[a-z0-9-]+$/u);
    const gone = changedText(text, { ...change, how: 'retire', set: [] });
    expect(JSON.parse(gone)).toEqual({ ...JSON.parse(OWN) });
  });

  it('engine is refused while others go by the only one there is, and they are named', () => {
    const one = opened(JSON.stringify(sandpiper));
    const { rows, texts, before } = rowsOf(one, 'engines', null);
    const fields = texts.with(0, 'Wing').with(1, '0.2').map(fieldWith);
    const { wrong } = typedPart({ kind: 'engines', id: null, how: 'add', of: one, rows, before, fields });
    expect(wrong).toMatchObject([
      { at: null, missing: false, trouble: { kind: 'field missing', place: { path: 'impellers.expected' } } },
      { at: null, missing: false, trouble: { kind: 'field missing', place: { path: 'impeller-change' } } },
    ]);
  });

  it('with nothing filled in says what is wanted', () => {
    for (const kind of Object.keys(ADDED) as PartKind[]) {
      const { wrong } = typedPart(draftOf(kind, null, {}));
      expect(wrong[0]).toMatchObject({
        at: 0,
        missing: true,
        trouble: { kind: 'field missing', field: 'name' },
      });
    }
  });
});

const setIn = (kind: PartKind, id: string | null, typed: { readonly [row: string]: string }) => {
  const { change, wrong } = typedPart(draftOf(kind, id, typed));
  expect(wrong).toEqual([]);
  return change.set.map(({ path, value, insert }) => [path.join('.'), value, ...(insert ? ['insert'] : [])]);
};
const wrongIn = (kind: PartKind, id: string | null, typed: { readonly [row: string]: string }) =>
  typedPart(draftOf(kind, id, typed)).wrong.map(({ at, trouble }) => ({ at, ...trouble }));

describe('lists and groups', () => {
  it('keep what the owner added to an entry that stays', () => {
    expect(setIn('services', 'impeller-change', { uses: 'impellers 2, fuses' })).toEqual([
      [
        'uses',
        [
          { spare: 'impellers', count: 2, ours: 'own.services.0.uses.0' },
          { spare: 'fuses', count: 1 },
        ],
      ],
    ]);
    expect(setIn('anchorages', 'heron-bight', { sectors: '300-60 12 kn; s-w 20 kn' })).toEqual([
      [
        'sectors',
        [
          { from: 300, to: 60, wind: 12, ours: 'own.anchorages.0.sectors.0' },
          { from: 180, to: 270, wind: 20 },
        ],
      ],
    ]);
  });

  it('of which nothing is left go whole', () => {
    expect(setIn('fluids', 'fuel', { 'loss lying: usual?': '', 'loss lying: on a bad day?': '' })).toEqual([
      ['loss.perDay', undefined],
    ]);
    expect(setIn('spares', 'impellers', { 'expected, per engine hour': '', 'expected, engine': '' })).toEqual(
      [['expected', undefined]],
    );
  });

  it('take the worst of ten readings for a reading error', () => {
    expect(setIn('fluids', 'fuel', { 'reading error: on a bad day?': '2.6' })).toEqual([['readingError', 2]]);
  });

  it('take a usual figure anew with the bad day that stands beside it', () => {
    expect(
      setIn('passages', 'to-otter-cay', { 'speed: usual?': '5', 'speed: on a bad day?': '3.7' }),
    ).toEqual([
      ['speed.mean', 5],
      ['speed.sd', 1],
    ]);
    expect(wrongIn('passages', 'to-otter-cay', { 'speed: on a bad day?': '7' })).toMatchObject([
      { kind: 'not understood', expected: 'a number of knots, no more than the usual 5.2' },
    ]);
  });
});

describe('checked as it is typed', () => {
  const rowOf = (kind: PartKind, id: string, name: string) => {
    const { rows } = rowsOf(boat, kind, id);
    return rows.findIndex((_, at) => askOf(rows, at) === name);
  };

  it('marks the wrong way round, in the words the file would be told in', () => {
    expect(wrongIn('fluids', 'gear-oil', { full: '0.5' })).toMatchObject([
      { at: rowOf('fluids', 'gear-oil', 'low'), kind: 'out of order', value: 1.1, place: { path: 'low' } },
    ]);
  });

  it('an id that nothing has, with the nearest one', () => {
    expect(wrongIn('fluids', 'gear-oil', { stock: 'gear-oil-cna' })).toMatchObject([
      { kind: 'not understood', text: 'gear-oil-cna', example: 'gear-oil-can' },
    ]);
    expect(wrongIn('fluids', 'gear-oil', { stock: 'fuses' })).toMatchObject([
      { at: rowOf('fluids', 'gear-oil', 'stock'), kind: 'wrong value' },
    ]);
  });

  it('a loss by the hour of no engine, and a service that never comes due', () => {
    expect(wrongIn('fluids', 'gear-oil', { engine: '' })).toMatchObject([
      { at: rowOf('fluids', 'gear-oil', 'engine'), kind: 'field missing', field: 'engine' },
    ]);
    expect(wrongIn('services', 'impeller-change', { 'every hours': '', 'every months': '' })).toMatchObject([
      { at: rowOf('services', 'impeller-change', 'every hours'), kind: 'field missing' },
    ]);
  });

  it('a passage without a leg', () => {
    expect(wrongIn('passages', 'to-otter-cay', { 'leg 1, to': '', 'leg 2, to': '' })).toMatchObject([
      { at: rowOf('passages', 'to-otter-cay', 'from') },
    ]);
  });
});

describe('the legs of a passage', () => {
  const id = 'to-otter-cay';

  it('begin where the one before was typed to end, and keep all else', () => {
    expect(setIn('passages', id, { 'leg 1, to': '41 30N 30W, 25 nm' })).toEqual([
      ['legs.0.to', [41.5, -30]],
      ['legs.0.nm', 25],
      ['legs.1.from', [41.5, -30]],
    ]);
    expect(setIn('passages', id, { 'leg 2, to': "41°54.0'N 29°30.0'W, 38 nm, Otter Sound" })).toEqual([
      ['legs.1.place', 'Otter Sound'],
    ]);
    expect(setIn('passages', id, { from: '41.1 -30.4' })).toEqual([['legs.0.from', [41.1, -30.4]]]);
  });

  it('end where they did, not where that is rounded to, when only their length is typed', () => {
    const exact = opened(OWN.replaceAll('41.4', '41.400001234'));
    const { rows, texts, before } = rowsOf(exact, 'passages', id);
    const at = rows.findIndex((_, row) => askOf(rows, row) === 'leg 1, to');
    const fields = texts.with(at, texts[at]!.replace('22 nm', '23 nm')).map(fieldWith);
    const { change } = typedPart({ kind: 'passages', id, how: 'change', of: exact, rows, before, fields });
    expect(change.set).toEqual([{ path: ['legs', 0, 'nm'], value: 23 }]);
  });

  it('close up where one is taken out, and go on at the end', () => {
    expect(setIn('passages', id, { 'leg 1, to': '' })).toEqual([
      ['legs.0', undefined],
      ['legs.0.from', [41.2, -30.4]],
    ]);
    expect(setIn('passages', id, { 'leg 3, to': '42 -29, 31 nm' })).toEqual([
      ['legs.2', { from: [41.9, -29.5], to: [42, -29], nm: 31, place: undefined }, 'insert'],
    ]);
  });

  it('has its lines in the order sailed', () => {
    const { rows } = rowsOf(boat, 'passages', id);
    expect(rows.map((_, at) => askOf(rows, at)).slice(1, 7)).toEqual([
      'from',
      'leg 1, to',
      'leg 1, sectors',
      'leg 2, to',
      'leg 2, sectors',
      'leg 3, to',
    ]);
    expect(fieldsOf('passages', { engines: [], legs: 0 }).some(({ path }) => path[0] === 'motoring')).toBe(
      false,
    );
  });
});
