import { describe, expect, it } from 'vitest';
import { textOf } from '../../../source/screens/lines.ts';
import { type Model, pageOf } from '../../../source/screens/model.ts';
import { spokenLines } from '../../../source/screens/spoken.ts';
import { update } from '../../../source/screens/update.ts';
import { good } from '../../../source/trouble.ts';
import { aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';

const text = (model: Model) => seen(model).join('\n');
const heard = (model: Model) => spokenLines(model).map(textOf).join('\n');
const readOnly = { kind: 'read only', folder: 'boat', code: 'EROFS' } as const;

describe('the stores', () => {
  it('a spare is used in at most six keys from the board', () => {
    const keys = ['s', 'i', 'm', 'enter', 'enter'];
    expect(keys.length).toBeLessThanOrEqual(6);
    const [saving, [request]] = update(moved(aModel(), ...keys.slice(0, -1)), { is: 'key', key: 'enter' });
    if (request?.do !== 'save') throw new Error('nothing was saved');
    expect(request.drafts).toMatchObject([{ kind: 'use', spare: 'impellers', count: 1 }]);
    const back = moved(saving, { is: 'saved', drafts: request.drafts, result: good([]) });
    expect(pageOf(back)).toMatchObject({ page: 'stores', find: { text: 'im' } });
    expect(back.notice).toContain('1 used');
  });

  it('what is found by the name comes before what is found by the locker or by what takes it', () => {
    const found = text(moved(aModel(), 's', { is: 'pasted', text: 'gear' }));
    expect(found).toContain('> ');
    expect(found).toMatch(/FOUND[\s\S]*Gear oil/u);
    expect(text(moved(aModel(), 's', { is: 'pasted', text: 'settee' }))).toContain('impeller');
    expect(text(moved(aModel(), 's', { is: 'pasted', text: 'zzz' }))).toContain(
      'Nothing aboard is called so: zzz',
    );
  });

  it('short and to buy come first, then locker by locker, then what was never counted', () => {
    const lines = seen(moved(aModel({ size: { columns: 120, rows: 60 } }), 's')).map((line) => line.trim());
    const places = ['SHORT OR TO BUY', 'PORT SETTEE', 'NOT ENTERED YET'].map((title) =>
      lines.findIndex((line) => line.startsWith(title)),
    );
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
  });

  it('+ puts aboard and = counts, whatever has been typed', () => {
    expect(pageOf(moved(aModel(), 's', 'i', 'm', '+'))).toMatchObject({ form: 'stow', about: 'impellers' });
    expect(pageOf(moved(aModel(), 's', 'i', 'm', '='))).toMatchObject({ form: 'count', about: 'impellers' });
  });

  it('says before anything is typed that nothing can be saved, and opens no form', () => {
    const model = moved(aModel({}, aDocument(), aLoaded({ readOnly })), 's');
    expect(text(model)).toContain('Looking only, nothing can be saved');
    expect(pageOf(moved(model, 'enter')).page).toBe('stores');
  });

  it('Tab is the shopping list, with how to have it as a file; Escape goes back a step at a time', () => {
    const listed = moved(aModel(), 's', 'i', 'tab');
    expect(text(listed)).toContain('hoveshort stores --csv > to-buy.csv');
    expect(pageOf(moved(listed, 'enter')).page).toBe('stores');
    const [once, twice, thrice] = [1, 2, 3].map((times) => moved(listed, ...Array(times).fill('escape')));
    expect(pageOf(once!)).toMatchObject({ shopping: false, find: { text: 'i' } });
    expect(pageOf(twice!)).toMatchObject({ find: { text: '' } });
    expect(pageOf(thrice!).page).toBe('board');
  });

  it('the choice rests in sight, one spare a step, at every size', () => {
    for (const size of SIZES) {
      let model = moved(aModel({ size }), 's');
      const chosen = new Set<string>();
      for (let step = 0; step < 8; step += 1, model = moved(model, 'down')) {
        const lines = seen(model).filter((line) => line.startsWith('> '));
        expect(lines).toHaveLength(1);
        chosen.add(lines[0]!);
      }
      expect(chosen.size).toBe(aLoaded().boat.spares.length);
      expect(pageOf(moved(model, 'right'))).toMatchObject({ page: 'item' });
    }
  });

  it('a screen reader hears what is typed and what is chosen, not every row', () => {
    const model = moved(aModel(), 's', 'f', 'u');
    expect(heard(model)).toContain('Now typing what to find: fu.');
    expect(heard(model).match(/Chosen:/gu)).toHaveLength(1);
  });

  it('letters find, even those that are keys elsewhere', () => {
    const model = moved(aModel(), 's', 'q', 'p', '!', { is: 'pasted', text: '\u001b[2J\u202e' });
    expect(pageOf(model).page).toBe('stores');
    for (const line of seen(model)) expect(line).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
  });
});
