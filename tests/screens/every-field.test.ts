import { describe, expect, it } from 'vitest';
import { readDraft } from '../../source/logbook/drafts.ts';
import { partsOf } from '../../source/screens/boat/part.ts';
import { type Field, fieldWith } from '../../source/screens/field.ts';
import { formKeys } from '../../source/screens/forms/form-keys.ts';
import { fillIn } from '../../source/screens/forms/form-moves.ts';
import { type FormName, forms } from '../../source/screens/forms/table.ts';
import { type Model, pageOf, type Request, withTop } from '../../source/screens/model.ts';
import { sightOf } from '../../source/screens/sight.ts';
import { update } from '../../source/screens/update.ts';
import { widthOf } from '../../source/screens/width.ts';
import { aModel, moved, seen } from '../helpers/a-model.ts';
import { BAD_INPUT } from '../helpers/bad-input.ts';
import { forbiddenIn } from '../helpers/hostile-texts.ts';

const COLUMNS = 80;
/** Wider than any field; that a whole page is cut to what a field takes is tried with the field. */
const MOST_PASTED = 300;
/** What can be typed where something must be, by field: with these a form can be saved. */
const GOOD: { readonly [field: string]: string } = {
  level: '1/2',
  amount: '300 ml',
  class: 'wet',
  passage: 'Heron',
  count: '2',
  text: 'looked at',
  value: '12.4',
  ok: 'yes',
  expires: '2027-05-01',
  share: '60 %',
  wind: '12',
  reading: '1200',
  seen: 'yes',
};
const WORDS = new Set(['for', 'text', 'why', 'note', 'name', 'locker', 'unit']);

/** A field with the caret in it, everything else on its page filled in as it should be. */
interface Place {
  readonly name: string;
  readonly model: Model;
  /** Whether it holds words, which anything on one line is. */
  readonly words: boolean;
  /** Whether a number can have a sign: one below zero, or a change of what was found last. */
  readonly signed?: boolean;
}

function formPlaces(): Place[] {
  const items = aModel();
  const item = (id: string): Model => ({ ...items, pages: [items.pages[0], { page: 'item', id, from: 0 }] });
  const ids = ['gear-oil', 'pencil', 'impellers', 'impeller-change', 'raw-water', 'house-bank', 'flares'];
  const under = (on: string, model: Model) =>
    formKeys.filter((one) => one.on.some((page) => page === on)).map(({ key }) => moved(model, key));
  const opened = [
    ...ids.flatMap((id) => under('item', item(id))),
    ...under('engine', { ...items, pages: [items.pages[0], { page: 'engine', id: 'main', from: 0 }] }),
    ...(['helped', 'inflow'] as const).map((form) => fillIn(form)(item('gear-oil'))[0]),
    ...under('board', items),
    ...under('stores', moved(items, 's')),
    ...under('log', moved(items, 'L')),
  ];
  const distinct = new Map<string, Model>();
  for (const model of opened) {
    const page = pageOf(model);
    if (page.page === 'form') distinct.set(`${page.form} ${page.about}`, model);
  }
  return [...distinct].flatMap(([name, model]) => fieldsOf(name, model));
}

function fieldsOf(name: string, model: Model): Place[] {
  const page = pageOf(model);
  const sight = sightOf(model);
  if (page.page !== 'form' || !sight) return [];
  const rows = forms[page.form].rows(sight, page.about);
  const one = { 'weather now': 'wind', 'anode look': 'share' }[page.form as string] ?? null;
  const good = rows.map(({ field, usual }) =>
    fieldWith(usual === null || field === one ? (GOOD[field] ?? '') : ''),
  );
  return rows.map(({ field }, at) => ({
    name: `${name}, ${field}`,
    model: withTop(model, { ...page, at, fields: good.with(at, fieldWith('')) }),
    words: WORDS.has(field),
    signed: field === 'level' || field === 'value',
  }));
}

function otherPlaces(): Place[] {
  const model = aModel();
  const down = (from: Model, times: number) => moved(from, ...Array<string>(times).fill('down'));
  const kinds = partsOf(model.boat.is === 'open' ? model.boat.loaded.boat : ({} as never));
  const chosen = new Map(kinds.map(({ kind }, at) => [kind, at]));
  const heard = moved(model, 'w', 't', ...'06:00', 'enter');
  const round = moved(model, 'r');
  const page = pageOf(round);
  const rows = page.page === 'round' ? page.rows.length : 0;
  return [
    ...[...chosen].flatMap(([kind, at]) => {
      const there = moved(model, 'b', ...Array<string>(at).fill('j'));
      const added = moved(there, 'a');
      const page = pageOf(added).page === 'boat item' ? added : moved(there, 'enter');
      const top = pageOf(page);
      const count = top.page === 'boat item' ? top.fields.length : 0;
      return Array.from({ length: count }, (_, row) => ({
        name: `another of ${kind}, line ${row}`,
        model: down(page, row),
        words: true,
      }));
    }),
    ...Array.from({ length: 7 }, (_, row) => ({
      name: `a forecast heard, line ${row}`,
      model: moved(heard, ...Array<string>((row + 6) % 7).fill('down'), 'ctrl u'),
      words: false,
    })),
    ...Array.from({ length: rows + 1 }, (_, row) => ({
      name: `the round, row ${row}`,
      model: down(moved(round, 'up'), row),
      words: false,
      signed: row > 0,
    })),
    { name: 'the stores, find', model: moved(model, 's'), words: true },
    { name: 'the log, search', model: moved(model, 'L', '/'), words: true },
  ];
}

/** What is typed in the field in hand. */
function typedIn(model: Model): Field | null {
  const page = pageOf(model);
  if (page.page === 'form' || page.page === 'boat item' || page.page === 'heard')
    return page.fields[page.at] ?? null;
  if (page.page === 'round') return page.fields[page.rows[page.at]?.look.id ?? 'the time'] ?? null;
  if (page.page === 'stores' || page.page === 'log') return page.find;
  return null;
}

function expectDrawn(model: Model, name: string): void {
  for (const line of seen(model)) {
    expect(widthOf(line), name).toBe(COLUMNS);
    expect(forbiddenIn(line), name).toBeNull();
  }
}

/** Entries as the log can hold them, and every number in them one. */
function expectSound(requests: readonly Request[], name: string): void {
  for (const request of requests) {
    if (request.do === 'save')
      for (const draft of request.drafts) expect(readDraft(draft).ok, name).toBe(true);
    // The boat and her limits are no entries of a list: they have no id.
    expect(JSON.stringify(request).replaceAll('"id":null', ''), name).not.toMatch(/NaN|Infinity|:null/u);
  }
}

const places = [...formPlaces(), ...otherPlaces()];

describe('every field of every page', () => {
  it('is tried: each form there is, but a restoring, which asks what a striking asks', () => {
    const tried = new Set(
      places.flatMap(({ model }) => {
        const page = pageOf(model);
        return page.page === 'form' ? [page.form] : [];
      }),
    );
    const names = Object.keys(forms).filter((name): name is FormName => name !== 'restore');
    expect([...tried].sort()).toEqual(names.sort());
    expect(places.length).toBeGreaterThan(120);
  });

  it('filled in as it should be, each form is saved', () => {
    for (const { name, model } of places) {
      const page = pageOf(model);
      // What it works out is logged nowhere.
      if (page.page !== 'form' || page.form === 'inflow') continue;
      const field = name.split(', ').at(-1)!;
      const filled = moved(model, { is: 'pasted', text: GOOD[field] ?? '' });
      const [asked, first] = update(filled, { is: 'key', key: 'enter' });
      const requests = first.length > 0 ? first : update(asked, { is: 'key', key: 'enter' })[1];
      expect(
        requests.map((request) => request.do),
        `${name}: ${seen(asked).join('\n')}`,
      ).toEqual(['save']);
    }
  });

  it.each(BAD_INPUT)(
    'holds against %s: drawn as it should be, still there, and nothing saved of it',
    (_, text) => {
      for (const { name, model, words, signed } of places) {
        const pasted = moved(model, { is: 'pasted', text: text.slice(0, MOST_PASTED) });
        const typed = typedIn(pasted)?.text.trim() ?? '';
        const [entered, requests] = update(pasted, { is: 'key', key: 'enter' });
        expectDrawn(entered, name);
        expectSound(requests, name);
        if (typed === '' || words || (signed && typed === '-1')) continue;
        expect(requests, name).toEqual([]);
        expect(JSON.stringify(pageOf(entered)), name).toContain(JSON.stringify(typed).slice(1, -1));
        expectSound(update(entered, { is: 'key', key: 'enter' })[1], name);
      }
    },
  );
});
