import { describe, expect, it } from 'vitest';
import { type Model, pageOf } from '../../../source/screens/model.ts';
import { update } from '../../../source/screens/update.ts';
import { aBoat } from '../../helpers/a-boat.ts';
import { aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aFirstModel, aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { anEntry } from '../../helpers/an-entry.ts';

const text = (model: Model) => seen(model).join('\n');

describe('the stores', () => {
  it('show what is short or to be bought first, and what nobody counted last', () => {
    const page = text(moved(aModel(), 's'));
    const at = (words: string) => {
      expect(page).toContain(words);
      return page.indexOf(words);
    };
    expect(at('Raw-water impellers')).toBeLessThan(at('Pencil anodes'));
    expect(at('Pencil anodes')).toBeLessThan(at('NOT ENTERED YET'));
    expect(at('NOT ENTERED YET')).toBeLessThan(at('Fuses'));
  });

  it('a spare used takes six keys from the board', () => {
    const keys = ['s', 'i', 'm', 'p', 'enter', 'enter'];
    const before = moved(aModel(), ...keys.slice(0, -1));
    const [, requests] = update(before, { is: 'key', key: keys.at(-1)! });
    expect(requests).toMatchObject([{ do: 'save', drafts: [{ kind: 'use', spare: 'impellers', count: 1 }] }]);
    expect(keys.length).toBeLessThanOrEqual(6);
  });

  it('are found as one types, by name, by id or by locker; Escape forgets what was typed, then leaves', () => {
    const found = moved(aModel(), 's', 'p', 'e', 'n');
    expect(text(found)).toContain('Pencil anodes');
    expect(text(found)).not.toContain('impellers');
    expect(text(moved(found, 'x'))).toContain('Nothing aboard is called so.');
    expect(text(moved(aModel(), 's', 'p', 'o', 'r', 't'))).toContain('> ~ Raw-water impellers');
    expect(text(moved(found, 'escape'))).toContain('impellers');
    expect(pageOf(moved(found, 'escape', 'escape')).page).toBe('board');
  });

  it('put aboard, counted, and each its own page', () => {
    const found = moved(aModel(), 's', 'p', 'e', 'n');
    expect(pageOf(moved(found, '+'))).toMatchObject({ page: 'form', form: 'stow', about: 'pencils' });
    expect(pageOf(moved(found, '='))).toMatchObject({ page: 'form', form: 'count', about: 'pencils' });
    expect(pageOf(moved(found, 'right'))).toMatchObject({ page: 'item', id: 'pencils' });
  });

  it('the choice stays on a store that is shown, at every size', () => {
    for (const size of SIZES) {
      const first = moved(aModel({ size }), 's');
      const last = moved(first, ...Array<string>(30).fill('down'));
      for (const model of [first, last])
        expect(seen(model).filter((line) => line.startsWith('>')).length).toBe(1);
      expect(text(moved(last, ...Array<string>(30).fill('up')))).toBe(text(first));
    }
  });

  it('the shopping list is a key away, with what it costs and how to get it as a file', () => {
    const list = text(moved(aModel(), 's', 'tab'));
    expect(list).toContain('1 x Raw-water impellers');
    expect(list).toContain('hoveshort stores --markdown');
    expect(text(moved(aModel(), 's', 'tab', 'tab'))).toContain('STORES');
  });

  it('are counted at once, and what is short of what is wanted is marked; only chances wait for the answer', () => {
    const boat = aBoat({
      spares: [
        { id: 'filters', name: 'Oil filters', wanted: 4, price: 16 },
        { id: 'clips', name: 'Hose clips', wanted: 2 },
        { id: 'belts', name: 'Drive belts' },
      ],
    });
    const counts = [
      anEntry('count', { spare: 'filters', count: 1 }, '2026-02-01T08:00:00Z'),
      anEntry('count', { spare: 'clips', count: 12 }, '2026-02-01T08:00:00Z'),
    ];
    const loaded = aLoaded({ boat, entries: counts });
    const waiting = moved(aFirstModel(), { is: 'loaded', result: { ok: true, value: loaded } }, 's');
    expect(text(waiting)).toMatch(/~ Oil filters +1 +buy 3/u);
    expect(text(waiting)).toContain('1 aboard, 4 wanted');
    expect(text(waiting)).toMatch(/ {2}Hose clips +12/u);
    expect(text(waiting)).toMatch(/NOT ENTERED YET\s+Drive belts/u);
    expect(text(waiting)).toContain('is being worked out');
    expect(text(waiting)).not.toContain('in 100');
    expect(text(moved(waiting, 'tab'))).toMatch(/being worked out\.\s+3 x Oil filters/u);
  });

  it('say where there are none', () => {
    expect(text(moved(aModel({}, aDocument({ items: [] })), 's'))).toContain('No stores in the boat file.');
  });
});
