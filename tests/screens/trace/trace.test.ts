import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../../source/condition/condition-at.ts';
import type { Draft, Entry } from '../../../source/logbook/entries.ts';
import { textOf } from '../../../source/screens/lines.ts';
import { type Loaded, type Model, pageOf } from '../../../source/screens/model.ts';
import { spokenLines } from '../../../source/screens/spoken.ts';
import { openTrace } from '../../../source/screens/trace/open-trace.ts';
import { update } from '../../../source/screens/update.ts';
import { ownTables } from '../../../source/tracing/tables.ts';
import { aBoat, sandpiper } from '../../helpers/a-boat.ts';
import { AT, aDocument, aLoaded, withEntries } from '../../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { anEntry } from '../../helpers/an-entry.ts';

const WIDE = { columns: 120, rows: 60 };
const text = (model: Model) => seen(model).join('\n');
const flat = (model: Model) => text(model).replace(/\s+/gu, ' ');

function traced(loaded: Loaded = aLoaded(), id = 'gear-oil', size: Model['size'] = WIDE): Model {
  const model = aModel({ size, by: 'Ada' }, aDocument(), loaded);
  return moved({ ...model, pages: [...model.pages, { page: 'item', id, from: 0 }] }, 'f');
}

function documentOf(model: Model) {
  const open = openTrace(model);
  if (!open) throw new Error(`no trace that is worked out: ${pageOf(model).page}`);
  return open.document;
}

function askedBy(model: Model, key: string): readonly Draft[] {
  const [, requests] = update(model, { is: 'key', key });
  return requests.flatMap((request) => (request.do === 'save' ? request.drafts : []));
}

/** The key pressed, what it asked for on the disk, and the folder read again. */
function answered(model: Model, key: string): Model {
  const [pressed, requests] = update(model, { is: 'key', key });
  const [request] = requests;
  if (request?.do !== 'save') throw new Error(`nothing was saved: ${pressed.notice}`);
  const { drafts } = request;
  const entries = drafts.map(({ kind, at, ...fields }) => anEntry(kind, fields as never, at) as Entry);
  const saved = moved(pressed, { is: 'saved', drafts, result: { ok: true, value: entries } });
  return moved(saved, { is: 'loaded', result: { ok: true, value: withEntries(openedIn(saved), entries) } });
}

function openedIn({ boat }: Model): Loaded {
  if (boat.is !== 'open') throw new Error('no boat');
  return boat.loaded;
}

/** The invented log with two hunts that work has closed, of a washer and of a hose. */
function withFound(): Loaded {
  const item = 'gear-oil';
  const at = (day: string) => `2025-${day}T09:00:00Z`;
  const clue = (day: string, what: string) =>
    anEntry('clue', { item, clue: what, seen: true }, at(day)) as Entry;
  const job = (day: string, text: string, cause: string) =>
    anEntry('job', { item, text, cause }, at(day)) as Entry;
  return withEntries(openedIn(traced()), [
    clue('03-01', 'hanging-drop'),
    job('03-02', 'new washer', 'plug'),
    clue('03-09', 'helped'),
    clue('08-01', 'wet-hose'),
    job('08-02', 'new hose', 'cooler-hose'),
    clue('08-09', 'helped'),
  ]);
}

describe('a trace on the board', () => {
  it('keeps the keys of the answers on the narrowest bottom line', () => {
    expect(seen(traced(aLoaded(), 'gear-oil', SIZES[0])).at(-1)).toMatch(
      /^ {2}y seen {2}n not {2}c cannot tell {2}/u,
    );
  });

  it('says first what can be lived with, then asks the next best look with its cautions', () => {
    const page = text(traced());
    expect(page.indexOf('Can be lived with')).toBeGreaterThan(0);
    expect(page.indexOf('Can be lived with')).toBeLessThan(page.indexOf('LOOK NEXT'));
    const { next, causes } = documentOf(traced());
    for (const words of [next!.ask, ...next!.cautions, causes[0]!.name, causes[1]!.name])
      expect(page).toContain(words);
  });

  it.each([
    ['y', { seen: true }],
    ['n', { seen: false }],
    ['c', { cannotTell: true }],
  ])('%s is saved as a clue of what was asked', (key, said) => {
    const model = traced();
    const clue = documentOf(model).next!.clue;
    expect(askedBy(model, key)).toEqual([
      { kind: 'clue', at: AT, by: 'Ada', item: 'gear-oil', clue, ...said },
    ]);
  });

  it('the chances come from the log once the answer is there, and another look is asked', () => {
    const before = traced();
    const asked = documentOf(before).next!.clue;
    const after = answered(before, 'n');
    expect(documentOf(after).next?.clue).not.toBe(asked);
    expect(documentOf(after).causes).not.toEqual(documentOf(before).causes);
    expect(text(after)).toContain('LOOKED FOR');
  });

  it('takes no second answer before the first is reckoned with', () => {
    const [pressed, requests] = update(traced(), { is: 'key', key: 'y' });
    expect(requests).toHaveLength(1);
    expect(askedBy(pressed, 'y')).toEqual([]);
    expect(text(pressed)).not.toContain('LOOK NEXT');
  });

  it('what could not be saved is said, and asked again', () => {
    const model = traced();
    const drafts = askedBy(model, 'y');
    const pressed = moved(model, 'y');
    const asked = pageOf(pressed);
    if (asked.page !== 'trace') throw new Error('not a trace');
    const trouble = { kind: 'cannot read', file: 'log', code: 'EROFS' } as const;
    const result = { ok: false, troubles: [trouble] } as const;
    const told = moved(pressed, { is: 'saved', drafts: asked.asked!.drafts, result });
    expect(told.notice).toContain('NOT SAVED');
    expect(askedBy(told, 'y')).toEqual(drafts);
  });

  it('comes by its looks to the order of repairs, and work done there is for the first cause', () => {
    let model = traced();
    let looks = 0;
    while (documentOf(model).next && looks < 40) {
      model = answered(model, 'y');
      looks += 1;
    }
    const { state, repairs, causes } = documentOf(model);
    expect(looks).toBeGreaterThan(0);
    expect(state).not.toBe('hunting');
    expect(text(model)).toContain('TO PUT RIGHT, in this order');
    expect(text(model)).not.toContain('y seen, n not');
    const form = moved(model, 'o');
    expect(pageOf(form)).toMatchObject({ page: 'form', form: 'job', about: 'gear-oil' });
    expect(text(form)).toContain(causes.find(({ id }) => id === repairs[0]!.cause)!.name);
    expect(askedBy(moved(form, 'd', 'o', 'n', 'e'), 'enter')).toMatchObject([
      { kind: 'job', item: 'gear-oil', text: 'done', cause: repairs[0]!.cause },
    ]);
  });

  it('u strikes the last answer, which is then asked again', () => {
    const before = traced();
    const two = answered(answered(before, 'n'), 'n');
    const one = answered(two, 'u');
    expect(documentOf(one)).toEqual(documentOf(answered(before, 'n')));
    expect(documentOf(answered(one, 'u')).next).toEqual(documentOf(before).next);
    expect(askedBy(before, 'u')).toEqual([]);
  });

  it('where nothing can be saved, says so and takes no answer', () => {
    const readOnly = { kind: 'cannot read', file: 'log', code: 'EROFS' } as const;
    const model = traced(aLoaded({ readOnly }));
    expect(text(model)).toContain('Looking only, nothing can be saved here.');
    for (const key of ['y', 'n', 'c', 'u', 'o']) expect(askedBy(model, key)).toEqual([]);
    expect(text(model)).not.toContain('y seen');
  });

  it('opens from the item alone that a table fits, and Escape goes back there', () => {
    expect(pageOf(traced(aLoaded(), 'water')).page).toBe('item');
    expect(pageOf(traced(aLoaded(), 'pencil'))).toMatchObject({ page: 'trace', table: 'anode-wear' });
    expect(pageOf(moved(traced(), 'escape'))).toEqual({ page: 'item', id: 'gear-oil', from: 0 });
  });

  it("counts an owner's own table, and says what is wrong with one that cannot be used", () => {
    const gear = ownTables().find(({ id }) => id === 'gear-oil')!;
    const own = { ...gear, title: 'our own gear oil' };
    const trouble = { kind: 'cannot read', file: 'tracing/x.json', code: 'EACCES' } as const;
    const page = text(traced(aLoaded({ own: { tables: [own], troubles: [trouble] } })));
    expect(page).toContain('our own gear oil');
    expect(page).toContain('tracing/x.json');
  });

  it('turns by Tab between the tables where several fit', () => {
    const gear = ownTables().find(({ id }) => id === 'gear-oil')!;
    const second = { ...gear, id: 'second', title: 'a second trouble' };
    const model = traced(aLoaded({ own: { tables: [second], troubles: [] } }));
    expect(pageOf(model)).toMatchObject({ table: 'second' });
    expect(pageOf(moved(model, 'tab'))).toMatchObject({ table: 'gear-oil' });
    expect(pageOf(moved(model, 'tab', 'tab'))).toMatchObject({ table: 'second' });
  });

  it('a look that is out of sight is shown before it is answered, at every size', () => {
    for (const size of SIZES) {
      let model = traced(aLoaded(), 'gear-oil', size);
      const { next } = documentOf(model);
      const beginning = next!.ask.split(' ').slice(0, 3).join(' ');
      if (!text(model).includes(beginning)) {
        expect(askedBy(model, 'y')).toEqual([]);
        model = moved(model, 'y');
      }
      expect(text(model)).toContain(beginning);
      const after = answered(model, 'n');
      expect(text(after)).toContain('LOOK NEXT');
    }
  });

  it('leads to the page of a hunt that work has closed, from the item as from the trace', () => {
    const model = traced(withFound());
    expect(text(model)).toContain('Closed by the work of');
    const page = moved(model, 'F');
    expect(pageOf(page)).toMatchObject({ page: 'found', id: 'gear-oil' });
    for (const words of [
      '1 of 2, the newest first',
      'new hose',
      'said to be cured',
      'a cooler fitting is wet',
    ])
      expect(text(page).toLowerCase()).toContain(words);
    const older = moved(page, 'right');
    expect(text(older)).toContain('2 of 2');
    expect(text(older)).toContain('New washer');
    expect(text(moved(older, 'right'))).toContain('2 of 2');
    expect(text(moved(older, 'left'))).toContain('1 of 2');
    const item = moved(model, 'escape');
    expect(text(item)).toContain('FOUND BEFORE');
    expect(pageOf(moved(item, 'F'))).toMatchObject({ page: 'found', id: 'gear-oil' });
    expect(pageOf(moved(traced(), 'F')).page).toBe('trace');
  });

  it('draws a closed hunt at every size, and reads it out whole', () => {
    for (const size of SIZES) {
      const page = moved(traced(withFound(), 'gear-oil', size), 'F');
      expect(text(page)).toContain('FIRST NOTICED');
      expect(Math.max(...seen(page).map((line) => line.length))).toBe(size.columns);
    }
    const words = spokenLines(moved(traced(withFound()), 'F')).map(textOf);
    for (const title of ['FIRST NOTICED', 'LOOKED FOR', 'LIKELIEST THEN', 'THE WORK', 'AFTER IT'])
      expect(words).toContain(title);
  });

  it('takes the word of who did the work on whether it helped, where work is open', () => {
    expect(pageOf(moved(traced(), 'h')).page).toBe('trace');
    const job = anEntry('job', { item: 'gear-oil', text: 'nipped up', cause: 'output-seal' }, AT) as Entry;
    const model = traced(withEntries(openedIn(traced()), [job]));
    expect(flat(model)).toContain('or h says so');
    const form = moved(model, 'h');
    expect(pageOf(form)).toMatchObject({ page: 'form', form: 'helped', about: 'gear-oil' });
    expect(askedBy(moved(form, 'n', 'o'), 'enter')).toMatchObject([
      { kind: 'clue', item: 'gear-oil', clue: 'helped', seen: false },
    ]);
  });

  it('of a bilge sets an opening against the pump, and logs nothing of it', () => {
    const bilge = { ...sandpiper.checks[0]!, id: 'bilge-pump', name: 'Bilge pump' };
    const loaded = aLoaded({ boat: aBoat({ checks: [bilge] }) });
    const at = { ...loaded, condition: conditionAt(loaded.boat, loaded.entries, Date.parse(AT)) };
    const model = traced(at, 'bilge-pump');
    const form = moved(model, 'v');
    expect(pageOf(form)).toMatchObject({ page: 'form', form: 'inflow' });
    expect(text(form)).toContain('Enter work out');
    const put = (typed: string) => ({ is: 'pasted', text: typed }) as const;
    const wrong = moved(form, put('large'), 'down', put('0.5 m'), 'enter');
    expect(text(wrong)).toContain('"large" is not understood');
    const filled = moved(form, put('38 mm'), 'down', put('0.5 m'), 'down', put('3000'));
    expect(askedBy(filled, 'enter')).toEqual([]);
    const told = moved(filled, 'enter');
    expect(pageOf(told).page).toBe('trace');
    expect(text(told)).toContain('Such an opening lets in about 128 L a minute.');
    expect(flat(told)).toContain('it does not keep up, 103 L a minute stays in');
    expect(pageOf(moved(traced(), 'v')).page).toBe('trace');
  });

  it('asks for what it tells, and shows no figure before it is there', () => {
    const before = aModel({ size: WIDE }, aDocument(), aLoaded());
    const item = { page: 'item', id: 'gear-oil', from: 0 } as const;
    const [shown, requests] = update({ ...before, pages: [...before.pages, item] }, { is: 'key', key: 'f' });
    expect(requests).toMatchObject([{ do: 'trace', asked: { id: 'gear-oil', table: 'gear-oil' } }]);
    expect(text(shown)).toContain('The log is being read.');
    expect(askedBy(shown, 'y')).toEqual([]);
  });

  it('drops what was told of something else meanwhile', () => {
    const { traced: now } = traced();
    const model = traced(aLoaded(), 'pencil');
    const late = { is: 'traced', of: now!.of, asked: now!.asked, told: now!.told! } as const;
    expect(moved(model, late)).toEqual(model);
  });

  it('is read out whole', () => {
    const words = spokenLines(traced()).map(textOf);
    const { next } = documentOf(traced());
    for (const line of [next!.ask, ...next!.cautions]) expect(words).toContain(line);
    expect(words.at(-1)).toContain('y seen');
  });
});
