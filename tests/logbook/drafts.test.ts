import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readDraft } from '../../source/logbook/drafts.ts';

const at = '2026-02-03T07:42:00Z';

/** The troubles of one bare entry, as `field: expected`. */
function troubles(value: unknown) {
  const read = readDraft(value);
  return read.ok
    ? []
    : read.troubles.map((one) => one.kind === 'wrong entry' && `${one.field}: ${one.expected}`);
}

describe('a bare entry', () => {
  it('of every kind is taken as it is', () => {
    const golden = readFileSync(join(import.meta.dirname, 'golden-v1.ndjson'), 'utf8')
      .trim()
      .split('\n');
    for (const line of golden) {
      const { v: _v, id: _id, p: _p, lc: _lc, rec: _rec, crc: _crc, ...draft } = JSON.parse(line);
      expect(readDraft(draft)).toEqual({ ok: true, value: draft });
    }
  });

  it('is told every trouble at once, with line, field, value, what would be right and the nearest name', () => {
    expect(readDraft({ kind: 'topup', at: 'noon', fluid: 'Gear Oil', amount: '0.4', shre: 1 }, 12)).toEqual({
      ok: false,
      troubles: [
        {
          kind: 'wrong entry',
          line: 12,
          field: 'at',
          value: 'noon',
          expected: 'a UTC instant such as "2026-02-03T07:42:00Z"',
        },
        {
          kind: 'wrong entry',
          line: 12,
          field: 'fluid',
          value: 'Gear Oil',
          expected: 'an id: small letters, digits and hyphens, at most 64, such as "gear-oil"',
        },
        {
          kind: 'wrong entry',
          line: 12,
          field: 'amount',
          value: '0.4',
          expected: 'a number from 0 to 1000000',
        },
        {
          kind: 'wrong entry',
          line: 12,
          field: 'shre',
          value: 1,
          expected: 'a field of topup: at, by, key, kind, fluid, amount, level, share, from',
          near: 'share',
        },
      ],
    });
  });

  it('of an unknown kind is offered the nearest one', () => {
    expect(readDraft({ kind: 'topupp', at })).toMatchObject({ troubles: [{ field: 'kind', near: 'topup' }] });
    expect(readDraft({ at })).toMatchObject({ troubles: [{ field: 'kind', value: undefined }] });
  });

  it('with a choice misspelt is offered the nearest one', () => {
    expect(readDraft({ kind: 'leak', at, item: 'gland', class: 'drop' })).toMatchObject({
      troubles: [{ field: 'class', expected: 'one of "dry", "wet", "drops", "falls"', near: 'drops' }],
    });
  });

  it('is told where in a list the trouble is', () => {
    const uses = [
      { spare: 'filter', count: 1 },
      { spare: 'seal', count: -1 },
    ];
    expect(troubles({ kind: 'service', at, service: 'oil', uses })).toEqual([
      'uses[1].count: a number from 0 to 1000000',
    ]);
    expect(troubles({ kind: 'service', at, service: 'oil', uses: [{ count: 1 }, 7] })).toEqual([
      'uses[0].spare: an id: small letters, digits and hyphens, at most 64, such as "gear-oil"',
      'uses[1]: {spare, count} in curly brackets',
    ]);
  });

  it.each([
    [
      { kind: 'hours', engine: 'main', reading: Number.POSITIVE_INFINITY },
      'reading: a number from 0 to 1000000',
    ],
    [{ kind: 'hours', engine: 'main', reading: Number.NaN }, 'reading: a number from 0 to 1000000'],
    [{ kind: 'hours', engine: 'main', reading: null }, 'reading: a number from 0 to 1000000'],
    [
      { kind: 'hours', reading: 3 },
      'engine: an id: small letters, digits and hyphens, at most 64, such as "gear-oil"',
    ],
    [{ kind: 'remark', text: 'x'.repeat(2001) }, 'text: text of at most 2000 characters'],
    [{ kind: 'plan', passage: 'out', crew: 1.5 }, 'crew: a whole number from 1 to 100'],
    [{ kind: 'dated', item: 'flares', expires: '2027-02-29' }, 'expires: a date such as "2027-03-31"'],
    [{ kind: 'clue', item: 'oil', clue: 'c', seen: 'yes' }, 'seen: true or false'],
    [{ kind: 'decision', verdict: 'go', score: '9', choice: 'go' }, 'score: a number from 0 to 100 or null'],
  ])('with a value that cannot be is refused: %j', (draft, expected) => {
    expect(troubles({ at, ...draft })).toEqual([expected]);
  });

  it.each([
    [{ kind: 'dip', fluid: 'oil' }, 'level: one of level, share, off'],
    [{ kind: 'dip', fluid: 'oil', level: 1, share: 1 }, 'share: one of level, share, off'],
    [{ kind: 'topup', fluid: 'oil', amount: 1, level: 1, share: 1 }, 'share: only one of level, share'],
    [{ kind: 'change', fluid: 'oil', level: 1, share: 1 }, 'share: only one of level, share'],
    [{ kind: 'anode', anode: 'shaft' }, 'share: one of share, massKg, or diameterMm and/or lengthMm'],
    [
      { kind: 'anode', anode: 'shaft', share: 1, massKg: 1 },
      'massKg: one of share, massKg, or diameterMm and/or lengthMm',
    ],
    [
      { kind: 'anode', anode: 'shaft', share: 1, lengthMm: 9 },
      'share: nothing beside diameterMm and lengthMm',
    ],
    [{ kind: 'check', check: 'pump' }, 'ok: one of ok, value'],
    [{ kind: 'check', check: 'pump', ok: true, value: 1 }, 'value: one of ok, value'],
    [{ kind: 'weather' }, 'wind: at least one of wind, gust, dir, seas, pressure, squalls'],
    [{ kind: 'gate', passage: 'out', leg: 0, from: at, to: at }, `to: an instant after ${at}`],
  ])('whose fields do not go together is refused: %j', (draft, expected) => {
    expect(troubles({ at, ...draft })).toEqual([expected]);
  });

  it.each([
    { kind: 'dip', fluid: 'oil', off: 'below' },
    { kind: 'topup', fluid: 'oil', amount: 1 },
    { kind: 'anode', anode: 'pencil', diameterMm: 9, lengthMm: 40 },
    { kind: 'anode', anode: 'pencil', lengthMm: 40 },
    { kind: 'weather', squalls: 'none' },
  ])('whose fields go together is taken: %j', (draft) => {
    expect(troubles({ at, ...draft })).toEqual([]);
  });

  it.each(['__proto__', 'constructor', 'prototype'])('with a field %s is refused', (key) => {
    const draft = JSON.parse(`{"kind":"remark","at":"${at}","text":"","${key}":{"kind":"strike"}}`);
    expect(troubles(draft)).toEqual([`${key}: no such field`]);
  });

  it.each([[null], [7], ['remark'], [[]], [[{ kind: 'remark' }]]])(
    'that is no entry at all is refused: %j',
    (value) => {
      expect(troubles(value)).toHaveLength(1);
    },
  );

  it('may not say what only the log says: id, writer, count, time of typing', () => {
    const framed = {
      v: 1,
      id: 'k7m2q9xd-1',
      p: '00000000',
      lc: 1,
      rec: at,
      crc: '00000000',
      writer: 'k7m2q9xd',
      n: 1,
    };
    expect(troubles({ kind: 'remark', at, text: '', ...framed })).toHaveLength(8);
  });
});
