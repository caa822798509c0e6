import { describe, expect, it } from 'vitest';
import { partsOf } from '../../../source/screens/boat/boat.ts';
import { type Model, pageOf } from '../../../source/screens/model.ts';
import { update } from '../../../source/screens/update.ts';
import { widthOf } from '../../../source/screens/width.ts';
import { bad, good } from '../../../source/trouble.ts';
import { aBoat } from '../../helpers/a-boat.ts';
import { aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { BAD_INPUT } from '../../helpers/bad-input.ts';

const pageText = (model: Model) => seen(model).join('\n');

/** The boat page with this item chosen. */
function at(id: string | null, model = aModel()): Model {
  if (model.boat.is !== 'open') throw new Error('a model without a boat');
  const index = partsOf(model.boat.loaded.boat).findIndex((part) => part.id === id);
  return moved(model, 'b', ...Array(index).fill('j'));
}

describe('the boat page', () => {
  it.each(SIZES)('says what she is made of, by kind, at $columns x $rows', (size) => {
    const model = moved(aModel({ size }), 'b');
    for (const line of seen(model)) expect(widthOf(line)).toBe(size.columns);
    expect(pageText(model)).toMatch(/ENGINES\s*\n {2}> /u);
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
        },
      },
    ]);
    const [done, next] = update(saving, { is: 'boat changed', what: 'saved', result: good(null) });
    expect([pageOf(done).page, done.notice, next]).toEqual(['boat', 'saved', [{ do: 'load' }]]);
  });

  it('asks a spread as the usual and a bad day, and writes both of them', () => {
    let model = moved(at('gear-oil'), 'enter');
    while (!pageText(model).includes('> loss, per engine hour: usual?')) model = moved(model, 'down');
    model = moved(model, 'ctrl u', ...'0.1', 'down', 'ctrl u', ...'0.36');
    const [, requests] = update(model, { is: 'key', key: 'enter' });
    expect(requests).toMatchObject([
      {
        change: {
          set: [
            { path: ['loss', 'perEngineHour', 'mean'], value: 0.1 },
            { path: ['loss', 'perEngineHour', 'sd'], value: 0.2 },
          ],
        },
      },
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
    expect(pageText(still)).toContain('Fluids[1].low is 2, above full (1)');
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
    const model = at(null, aModel({}, aDocument(), aLoaded({ boat })));
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

  it.each(BAD_INPUT)('no field breaks under %s', (_, text) => {
    let model = moved(at('gear-oil'), 'enter');
    for (let row = 0; row < 25; row += 1) {
      model = moved(model, { is: 'pasted', text });
      for (const line of seen(moved(model, 'enter'))) expect(widthOf(line)).toBe(80);
      model = moved(model, 'down');
    }
  });
});
