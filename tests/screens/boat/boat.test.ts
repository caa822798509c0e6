import { describe, expect, it } from 'vitest';
import type { BoatChange } from '../../../source/boat/change.ts';
import type { PartKind } from '../../../source/boat/parts.ts';
import { askOf } from '../../../source/screens/boat/boat-item-page.ts';
import { partsOf } from '../../../source/screens/boat/part.ts';
import { type Model, pageOf } from '../../../source/screens/model.ts';
import { update } from '../../../source/screens/update.ts';
import { widthOf } from '../../../source/screens/width.ts';
import { bad, good } from '../../../source/trouble.ts';
import { aBoat } from '../../helpers/a-boat.ts';
import { aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { BAD_INPUT } from '../../helpers/bad-input.ts';

const pageText = (model: Model) => seen(model).join('\n');

/** The boat page with this item chosen; a kind chooses its first. */
function at(id: string | null, model = aModel(), kind?: PartKind): Model {
  if (model.boat.is !== 'open') throw new Error('a model without a boat');
  const index = partsOf(model.boat.loaded.boat).findIndex(
    (part) => part.id === id && (kind === undefined || part.kind === kind),
  );
  expect(index).toBeGreaterThanOrEqual(0);
  return moved(model, 'b', ...Array(index).fill('j'));
}

/** The page of a part with the row of this name in hand, all that stood in it taken out. */
function onRow(model: Model, name: string): Model {
  const page = pageOf(model);
  if (page.page !== 'boat item') throw new Error('not the page of a part');
  const names = page.rows.map((_, row) => askOf(page.rows, row));
  expect(names).toContain(name);
  const by = names.indexOf(name) - page.at;
  return moved(model, ...Array(Math.abs(by)).fill(by < 0 ? 'up' : 'down'), 'ctrl u');
}

const typed = (model: Model, name: string, text: string) => moved(onRow(model, name), { is: 'pasted', text });

/** What Enter would have written; null where it asks for nothing. */
function written(model: Model): BoatChange | null {
  const [request] = update(model, { is: 'key', key: 'enter' })[1];
  return request?.do === 'change boat' ? request.change : null;
}

const setBy = (model: Model) => written(model)?.set.map(({ path, value }) => [path.join('.'), value]);

describe('the boat page', () => {
  it.each(SIZES)('says what she is made of, by kind, at $columns x $rows', (size) => {
    const model = moved(aModel({ size }), 'b');
    for (const line of seen(model)) expect(widthOf(line)).toBe(size.columns);
    expect(pageText(model)).toMatch(/THE BOAT\s*\n {2}> /u);
    for (const line of seen(moved(model, 'enter', 'down'))) expect(widthOf(line)).toBe(size.columns);
  });

  it('keeps the item chosen in sight, first to last', () => {
    for (const key of ['G', 'g', 'page down'])
      expect(pageText(moved(aModel({ size: SIZES[0] }), 'b', key))).toMatch(/^ {2}> /mu);
  });

  it('writes only what was changed', () => {
    const model = moved(at('gear-oil'), 'enter', 'ctrl u', ...'Sump', 'tab', 'tab', 'ctrl u', '4');
    const [saving, requests] = update(model, { is: 'key', key: 'enter' });
    expect(requests).toEqual([
      {
        do: 'change boat',
        what: 'saved in boat.json: Sump',
        change: {
          kind: 'fluids',
          id: 'gear-oil',
          how: 'change',
          set: [
            { path: ['name'], value: 'Sump' },
            { path: ['everyDays'], value: 4 },
          ],
          was: [
            { path: ['name'], value: 'Gear oil' },
            { path: ['everyDays'], value: 3 },
          ],
        },
      },
    ]);
    const [done, next] = update(saving, { is: 'boat changed', what: 'saved', result: good(null) });
    expect([pageOf(done).page, done.notice, next]).toEqual(['boat', 'saved', [{ do: 'load' }]]);
  });

  it('asks a spread as the usual and a bad day, and writes both of them', () => {
    let model = typed(moved(at('gear-oil'), 'enter'), 'loss running: usual?', '0.1');
    model = typed(model, 'loss running: on a bad day?', '0.36');
    expect(pageText(model)).toContain('taken as: a spread of 0.2 L');
    expect(setBy(model)).toEqual([
      ['loss.perEngineHour.mean', 0.1],
      ['loss.perEngineHour.sd', 0.2],
    ]);
  });

  it('goes to what cannot stand there and says what can, and keeps all that was typed', () => {
    const model = moved(at('gear-oil'), 'enter', 'tab', 'tab', 'ctrl u', ...'often', 'tab', 'enter');
    expect(pageText(model)).toContain('"often" is not understood here. It takes a number of days');
    expect(pageText(model)).toMatch(/> every days +often▏/u);
  });

  it('stays as it was typed where the boat file would be in trouble', () => {
    const [saving] = update(moved(at('gear-oil'), 'enter', '!'), { is: 'key', key: 'enter' });
    const place = { file: 'boat.json', line: 3, path: 'fluids[1].low' };
    const trouble = {
      kind: 'out of order',
      place,
      value: 2,
      than: { path: 'full', value: 1 },
      unit: 'litres',
      remedy: null,
    } as const;
    const [still] = update(saving, { is: 'boat changed', what: 'saved', result: bad(trouble) });
    expect(pageText(still)).toContain('boat.json, line 3: fluids[1].low is 2, above full (1)');
    expect(pageText(still)).toContain('Try: "low": 1, "full": 2');
    expect(pageText(still)).toMatch(/> name +Gear oil!▏/u);
  });

  it('adds another of its kind under an id made of its name', () => {
    const [, requests] = update(moved(at('gear-oil'), 'a', ...'Gear oil'.replace(' ', '_')), {
      is: 'key',
      key: 'enter',
    });
    expect(requests).toEqual([]);
    const check = aModel();
    const first = check.boat.is === 'open' ? check.boat.loaded.boat.checks[0]!.id : '';
    const [, added] = update(moved(at(first), 'a', ...'Lamps'), { is: 'key', key: 'enter' });
    expect(added).toMatchObject([
      { change: { kind: 'checks', id: 'lamps', how: 'add', set: [{ path: ['name'], value: 'Lamps' }] } },
    ]);
  });

  it('adds the first of a kind she has none of', () => {
    const boat = aBoat({ dated: [] });
    const model = at(null, aModel({}, aDocument(), aLoaded({ boat })), 'dated');
    expect(pageText(model)).toContain('none yet');
    expect(moved(model, 'x').notice).toBeNull();
    for (const key of ['a', 'enter']) {
      const page = pageOf(moved(model, key));
      expect(page).toMatchObject({ page: 'boat item', kind: 'dated', id: null });
    }
  });

  it('retires at the second x only', () => {
    const [asked, none] = update(at('gear-oil'), { is: 'key', key: 'x' });
    expect([none, asked.notice]).toEqual([[], 'x again retires Gear oil; its entries stay in the log']);
    expect(update(moved(asked, 'j', 'k'), { is: 'key', key: 'x' })[1]).toEqual([]);
    expect(update(asked, { is: 'key', key: 'x' })[1]).toMatchObject([
      { change: { id: 'gear-oil', how: 'retire' } },
    ]);
  });

  it('does not retire what others name, and says which, why and what to do', () => {
    const [asked, none] = update(at('impellers'), { is: 'key', key: 'x' });
    expect(none).toEqual([]);
    const text = pageText(asked).replace(/\s+/gu, ' ');
    expect(text).toContain('"Raw-water impellers" stays: "Raw-water impeller" names it in "uses"');
    expect(text).toContain('Try: take it out of "uses" of "Raw-water impeller" first, then x again');
    expect(update(asked, { is: 'key', key: 'x' })[1]).toEqual([]);
    expect(pageText(moved(asked, 'j'))).not.toContain('stays:');
    expect(pageText(moved(at('main'), 'x'))).toContain(
      '"Main engine" stays: "Gear oil" names it in "engine"',
    );
    expect(pageText(moved(at('to-otter-cay'), 'x'))).toContain('"Sandpiper" names it in "passage"');
  });

  it('says the whole of what stood in the way of retiring', () => {
    const [asked] = update(moved(at('gear-oil'), 'x'), { is: 'key', key: 'x' });
    const trouble = { kind: 'cannot write', file: 'boat.json', code: 'ENOSPC' } as const;
    const [still] = update(asked, { is: 'boat changed', what: 'retired', result: bad(trouble) });
    const text = pageText(still);
    expect(text).toContain('boat.json cannot be written: the disk is full (ENOSPC)');
    expect(text).toContain('Try: ');
  });

  it('goes from kind to kind, and says of the limits that there is one of them', () => {
    const model = moved(aModel(), 'b', 'tab', 'tab');
    expect(pageText(model)).toMatch(/FLUIDS\s*\n {2}> Gear oil/u);
    expect(pageText(moved(model, 'back tab'))).toMatch(/ENGINES\s*\n {2}> /u);
    const limits = at(null, aModel(), 'limits');
    expect(moved(limits, 'x').notice).toBe('what she goes out in cannot be retired');
    expect(moved(limits, 'a').notice).toBe('there is but one: Enter changes it');
  });

  it('writes limits, anchorages and what the boat has of her own', () => {
    const limits = moved(at(null, aModel(), 'limits'), 'enter');
    expect(setBy(typed(typed(limits, 'wind', 'f5'), 'daylight', '1 2'))).toEqual([
      ['wind', 19],
      ['daylight', { afterSunrise: 1, beforeSunset: 2 }],
    ]);
    expect(setBy(typed(limits, 'seas', 'off'))).toEqual([['seas', false]]);
    const alone = moved(at(null, aModel(), 'alone'), 'enter');
    expect(written(typed(alone, 'wind', '12'))).toMatchObject({ kind: 'alone', id: null, how: 'change' });
    const lying = moved(at('heron-bight'), 'enter');
    expect(setBy(typed(lying, 'sectors', 'n-e 12'))).toEqual([['sectors', [{ from: 0, to: 90, wind: 12 }]]]);
    expect(setBy(typed(moved(at(null, aModel(), 'boat'), 'enter'), 'crew', '3'))).toEqual([['crew', 3]]);
  });

  it('begins a passage with the ways of the one there is, and has room for each further leg', () => {
    let model = moved(at('to-otter-cay'), 'a');
    expect(pageText(model)).toMatch(/speed: usual\? +5\.2 kn/u);
    expect(pageText(onRow(model, 'reserve days')).replace(/\s+/gu, ' ')).toContain(
      'As in Heron Bight to Otter Cay; yours to change.',
    );
    model = typed(typed(model, 'name', 'Home'), 'from', '41.9 -29.5');
    model = typed(model, 'leg 1, to', '41 24N 30W, 40 nm');
    model = typed(model, 'leg 2, to', 'Heron Bight');
    model = typed(model, 'leg 2, sectors', 'w-n 14');
    expect(pageText(onRow(model, 'leg 3, to'))).toContain('> leg 3, to');
    expect(pageText(moved(model, { is: 'resized', size: SIZES[2] }))).toContain('ANOTHER PASSAGE  home');
    expect(Object.fromEntries(setBy(model) ?? [])).toMatchObject({
      legs: [
        { from: [41.9, -29.5], to: [41.4, -30], nm: 40 },
        { from: [41.4, -30], to: [41.2, -30.4], sectors: [{ from: 270, to: 0, wind: 14 }] },
      ],
      'speed.mean': 5.2,
      reserveDays: 2,
    });
  });

  it('puts a leg in with Ctrl+N, on the lines of legs only', () => {
    const model = moved(onRow(moved(at('to-otter-cay'), 'enter'), 'leg 3, to'), 'up', 'up', 'ctrl n');
    expect(setBy(moved(model, ...'41.6 -29.8'))).toEqual([
      ['legs.1', { from: [41.4, -30], to: [41.6, -29.8] }],
      ['legs.2.from', [41.6, -29.8]],
    ]);
    const name = moved(at('to-otter-cay'), 'enter');
    expect(pageOf(moved(name, 'ctrl n'))).toEqual(pageOf(name));
    expect(pageText(name)).not.toContain('Ctrl+N');
  });

  it('says as one types what it is taken for, or what is wrong with all of it, and takes every key', () => {
    const model = typed(moved(at('gear-oil'), 'enter'), 'full', '0.5');
    expect(pageText(model)).toContain('Low is 1.1, above full (0.5)');
    expect(pageText(model)).toMatch(/ ! low +1\.1 L/u);
    expect(pageText(typed(model, 'full', '1500 ml'))).toContain('taken as: 1.5 L');
    expect(pageText(moved(typed(model, 'full', '1500 ml'), 'enter'))).toContain('saving');
  });

  it('leaves what was typed at the second Esc only', () => {
    const model = moved(at('gear-oil'), 'enter');
    expect(pageOf(moved(model, 'escape')).page).toBe('boat');
    const [asked] = update(moved(model, '!'), { is: 'key', key: 'escape' });
    expect([pageOf(asked).page, asked.notice]).toEqual(['boat item', 'Esc again goes back, nothing saved']);
    expect(pageOf(moved(asked, '!', 'escape')).page).toBe('boat item');
    expect(pageOf(moved(asked, 'escape')).page).toBe('boat');
  });

  it('adds under another id where somebody else took the first one meanwhile', () => {
    const model = typed(moved(at('house-bank'), 'a'), 'name', 'Lamps');
    expect(written(model)?.id).toBe('lamps');
    const boat = aBoat();
    const loaded = aLoaded({
      boat: { ...boat, checks: [...boat.checks, { ...boat.checks[0]!, id: 'lamps' }] },
    });
    expect(written(moved(model, { is: 'loaded', result: good(loaded) }))?.id).toBe('lamps-2');
  });

  it('changed by somebody else meanwhile: keeps what was typed, and writes over it at the second Enter', () => {
    const [saving] = update(typed(moved(at('gear-oil'), 'enter'), 'low', '1'), { is: 'key', key: 'enter' });
    const trouble = { kind: 'changed meanwhile', id: 'gear-oil', field: 'low' } as const;
    const [told, requests] = update(saving, { is: 'boat changed', what: 'saved', result: bad(trouble) });
    expect(requests).toEqual([{ do: 'load' }]);
    const text = pageText(told).replace(/\s+/gu, ' ');
    expect(text).toContain('"low" of "gear-oil" is not what it was');
    expect(text).toContain('Try: Enter once more, to write yours over it');
    expect(pageText(told)).toMatch(/> low +1▏/u);
    expect(written(told)).toMatchObject({ set: [{ path: ['low'], value: 1 }], was: [] });
  });

  it('keeps what was typed while the file is in trouble, and says which', () => {
    const place = { file: 'boat.json', line: 3 };
    const trouble = { kind: 'not json', place, what: 'trailing comma' } as const;
    const model = typed(moved(at('gear-oil'), 'enter'), 'low', '1');
    const shut = moved(model, { is: 'loaded', result: bad(trouble) });
    expect(pageText(shut)).toMatch(/> low +1▏/u);
    const [told, requests] = update(shut, { is: 'key', key: 'enter' });
    expect(requests).toEqual([]);
    expect(pageText(told)).toContain('boat.json, line 3: a comma stands before the closing bracket');
  });

  it('says what stands in the way where nothing can be saved', () => {
    const readOnly = { kind: 'read only', folder: '/media/stick', code: 'EROFS' } as const;
    const model = at('gear-oil', aModel({}, aDocument(), aLoaded({ readOnly })));
    for (const key of ['enter', 'a', 'x'])
      expect(pageText(moved(model, key))).toContain(
        '/media/stick can be looked at, and nothing can be saved',
      );
  });

  it('says under the lines what only the file holds', () => {
    const lines = pageText(moved(at(null, aModel(), 'limits'), 'enter', 'up')).replace(/\s+/gu, ' ');
    expect(lines).toContain(
      'Only in the file (Esc, then E): how far forecasts stray (forecastError), fields of your own.',
    );
  });

  it.each(BAD_INPUT)('no field breaks under %s', (_, text) => {
    let model = moved(at('to-otter-cay'), 'enter');
    for (let row = 0; row < 18; row += 1) {
      model = moved(model, { is: 'pasted', text });
      for (const line of seen(moved(model, 'enter'))) expect(widthOf(line)).toBe(80);
      model = moved(model, 'down');
    }
  });
});
