import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../../source/condition/condition-at.ts';
import type { Draft, Entry } from '../../../source/logbook/entries.ts';
import { stream } from '../../../source/maths/stream.ts';
import { keysOf } from '../../../source/screens/keys.ts';
import { textOf } from '../../../source/screens/lines.ts';
import { type Loaded, type Model, pageOf, type Request } from '../../../source/screens/model.ts';
import { spokenLines } from '../../../source/screens/spoken.ts';
import { update } from '../../../source/screens/update.ts';
import { bad, good } from '../../../source/trouble.ts';
import type { VerdictDocument } from '../../../source/words/document.ts';
import { aBoat, sandpiper } from '../../helpers/a-boat.ts';
import { AT, aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aFirstModel, aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { anEntry } from '../../helpers/an-entry.ts';

const NOW = Date.parse(AT);
const DAY_MS = 86_400_000;
const ago = (days: number) => NOW - days * DAY_MS;

/** Twelve looks, each made some days ago but for the last two: no one looked yet. */
function aMorning(): Loaded {
  const [gear, fuel, water] = sandpiper.fluids;
  const boat = aBoat({
    fluids: [gear!, fuel!, water!, { ...gear!, id: 'engine-oil', name: 'Engine oil', low: 4, full: 5 }],
    checks: [
      ...sandpiper.checks,
      { id: 'steering', name: 'Steering, stop to stop', everyDays: 1 },
      {
        id: 'gland',
        name: 'Stern gland',
        ask: 'number',
        unit: 'drops/min',
        atMost: 6,
        everyDays: 1,
        when: 'running',
      },
      {
        id: 'charging',
        name: 'Charging',
        ask: 'number',
        unit: 'V',
        atLeast: 13.8,
        everyDays: 1,
        when: 'running',
      },
      { id: 'seacocks', name: 'Seacocks as wanted', when: 'leaving' },
      { id: 'decks', name: 'Decks clear', when: 'leaving' },
    ],
  });
  const entries = [
    anEntry('arrived', {}, ago(20)),
    anEntry('hours', { engine: 'main', reading: 3412.6 }, ago(5)),
    anEntry('dip', { fluid: 'gear-oil', level: 1.2 }, ago(5)),
    anEntry('dip', { fluid: 'fuel', level: 120 }, ago(5)),
    anEntry('dip', { fluid: 'water', level: 170 }, ago(5)),
    anEntry('dip', { fluid: 'engine-oil', level: 4.8 }, ago(5)),
    anEntry('anode', { anode: 'pencil', share: 0.6 }, ago(40)),
    anEntry('check', { check: 'house-bank', value: 12.7 }, ago(5)),
    anEntry('check', { check: 'steering', ok: true }, ago(5)),
    anEntry('check', { check: 'gland', value: 4 }, ago(5)),
    anEntry('check', { check: 'charging', value: 14.1 }, ago(5)),
    anEntry('check', { check: 'raw-water', ok: true }, ago(30)),
    anEntry('check', { check: 'seacocks', ok: true }, ago(30)),
  ];
  return aLoaded({ boat, entries, condition: conditionAt(boat, entries, NOW) });
}

/** The round open at its first row. */
function aRound(given: Parameters<typeof aModel>[0] = {}, loaded = aMorning()): Model {
  return moved(aModel(given, aDocument(), loaded), 'r');
}

/** A disk that takes everything, or nothing, and the board upon it: the answers come in at once. */
function played(model: Model, keys: readonly string[], disk: 'sound' | 'full' = 'sound') {
  const saved: Draft[] = [];
  let count = 0;
  const answered = (from: Model, requests: readonly Request[]): Model =>
    requests.reduce((next, request) => {
      if (request.do !== 'save') return next;
      const { drafts } = request;
      if (disk === 'full') {
        const result = bad({ kind: 'not saved', code: 'ENOSPC', text: '{}' });
        return answered(...update(next, { is: 'saved', drafts, result }));
      }
      saved.push(...drafts);
      const entries = drafts.map((draft): Entry => {
        count += 1;
        return { ...draft, id: `aaaaaa-${count}`, writer: 'aaaaaa', n: count, lc: 1000 + count, rec: AT };
      });
      return answered(...update(next, { is: 'saved', drafts, result: good(entries) }));
    }, from);
  const end = keys.reduce((next, key) => answered(...update(next, { is: 'key', key })), model);
  return { model: end, saved };
}

/** Letters as keys; `~` is Enter, `>` down, `<` up. */
const keys = (text: string) =>
  [...text].map(
    (letter) => ({ ' ': 'space', '~': 'enter', '>': 'down', '<': 'up', '^': 'escape' })[letter] ?? letter,
  );
const at = (saved: readonly Draft[]) => saved.map(({ at: _, ...rest }) => rest);
const text = (model: Model) => seen(model).join('\n');

describe('a round', () => {
  it('shows what is due in three passes, in walking order, with what was found last', () => {
    const shown = text(aRound({ size: { columns: 120, rows: 60 } }));
    const order = [
      'ENGINE STOPPED',
      'Main engine',
      'Gear oil',
      'Fuel',
      'Fresh water',
      'Engine oil',
      'Heat-exchanger',
      'House bank',
      'Steering',
      'ENGINE RUNNING',
      'Stern gland',
      'Charging',
      'BEFORE LEAVING',
      'Raw water',
      'Decks clear',
    ];
    const places = order.map((name) => shown.indexOf(name));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(shown).toContain('3412.6 h');
    expect(shown).toMatch(/Decks clear +never looked at/u);
  });

  it('twelve readings, four of them changed, take at most thirty keys', () => {
    const pressed = keys('+1.5~-.02~>>>>12.6~>>14.3~aa');
    const { model, saved } = played(aRound(), pressed);
    expect(saved).toHaveLength(12);
    expect(at(saved).slice(0, 4)).toEqual([
      { kind: 'hours', engine: 'main', reading: 3414.1 },
      { kind: 'dip', fluid: 'gear-oil', level: 1.18 },
      { kind: 'check', check: 'house-bank', value: 12.6 },
      { kind: 'check', check: 'charging', value: 14.3 },
    ]);
    expect(pressed.length).toBeLessThanOrEqual(30);
    expect(text(model)).toContain('12 of 13 entered');
  });

  it('Enter in an empty row logs a reading of the same value; down logs nothing', () => {
    const { saved } = played(aRound(), keys('~>~'));
    expect(at(saved)).toEqual([
      { kind: 'hours', engine: 'main', reading: 3412.6 },
      { kind: 'dip', fluid: 'fuel', level: 120 },
    ]);
  });

  it('what was poured in since counts into what a level is unchanged from', () => {
    const morning = aMorning();
    const entries = [...morning.entries, anEntry('topup', { fluid: 'gear-oil', amount: 0.1 }, ago(4))];
    const loaded = aLoaded({
      boat: morning.boat,
      entries,
      condition: conditionAt(morning.boat, entries, NOW),
    });
    const { saved } = played(aRound({}, loaded), keys('>~'));
    expect(at(saved)).toEqual([{ kind: 'dip', fluid: 'gear-oil', level: 1.3 }]);
  });

  it.each([
    [
      '1/2 +50ml drops',
      [
        { kind: 'dip', share: 0.5 },
        { kind: 'topup', amount: 0.05, from: 'gear-oil-can' },
        { kind: 'leak', class: 'drops' },
      ],
    ],
    [
      '-.05 +,1',
      [
        { kind: 'dip', level: 1.15 },
        { kind: 'topup', amount: 0.1 },
      ],
    ],
    ['wet', [{ kind: 'leak', class: 'wet' }]],
    ['poured 100 ml', [{ kind: 'topup', amount: 0.1 }]],
    [
      'same dry',
      [
        { kind: 'dip', level: 1.2 },
        { kind: 'leak', class: 'dry' },
      ],
    ],
    ['full', [{ kind: 'dip', share: 1 }]],
    [
      'low falls',
      [
        { kind: 'dip', share: 0 },
        { kind: 'leak', class: 'falls' },
      ],
    ],
    ['off', [{ kind: 'dip', off: 'below' }]],
    ['1,25', [{ kind: 'dip', level: 1.25 }]],
    ['1150 ml', [{ kind: 'dip', level: 1.15 }]],
  ])('a fluid takes level, what was poured in and drips at once: %s', (typed, found) => {
    expect(played(aRound(), keys(`>${typed}~`)).saved).toMatchObject(found);
  });

  it('a says how many, and what was never looked at; the looks before leaving wait for their pass', () => {
    const first = played(aRound(), ['a']);
    expect(first.saved).toHaveLength(10);
    expect(first.model.notice).toBe('10 unchanged');
    const second = played(first.model, ['a']);
    expect(second.saved).toHaveLength(2);
    expect(second.model.notice).toContain('1 never seen');
    expect(played(first.model, ['u', 'u']).saved.filter(({ kind }) => kind === 'strike')).toHaveLength(10);
  });

  it('Enter in a row never looked at asks for what was found', () => {
    const { model, saved } = played(aRound(), keys('>>>>>>>>>>>>~'));
    expect(saved).toEqual([]);
    expect(model.notice).toContain('never looked at');
  });

  it('u strikes what was entered last, again the one before, and goes back there', () => {
    const { model, saved } = played(aRound(), keys('+1~1/2 drops~uu'));
    expect(saved.slice(3)).toMatchObject([
      { kind: 'strike', entry: 'aaaaaa-2' },
      { kind: 'strike', entry: 'aaaaaa-3' },
      { kind: 'strike', entry: 'aaaaaa-1' },
    ]);
    expect(pageOf(model)).toMatchObject({ at: 0, batches: [] });
    expect(played(model, ['u']).model.notice).toContain('nothing of this round');
  });

  it('u before the disk has answered strikes it once it has', () => {
    const [saving, [request]] = update(moved(aRound(), '+', '1'), { is: 'key', key: 'enter' });
    if (request?.do !== 'save') throw new Error('nothing was saved');
    const struck = moved(saving, 'u');
    const entry = { ...request.drafts[0]!, id: 'bbbbbb-1', writer: 'bbbbbb', n: 1, lc: 9, rec: AT } as Entry;
    const [, requests] = update(struck, { is: 'saved', drafts: request.drafts, result: good([entry]) });
    expect(requests).toMatchObject([
      { do: 'load' },
      { do: 'save', drafts: [{ kind: 'strike', entry: 'bbbbbb-1' }] },
    ]);
  });

  it('typing over an entered row takes its place', () => {
    const { saved } = played(aRound(), keys('+1~<+2~'));
    expect(at(saved)).toEqual([
      { kind: 'hours', engine: 'main', reading: 3413.6 },
      { kind: 'hours', engine: 'main', reading: 3414.6 },
      { kind: 'strike', entry: 'aaaaaa-1' },
    ]);
  });

  it('asks once about what is in doubt, in its row; Enter again saves it', () => {
    const once = played(aRound(), keys('3000~'));
    expect(once.saved).toEqual([]);
    expect(text(once.model)).toContain('Enter again saves it');
    expect(played(once.model, ['enter']).saved).toMatchObject([{ kind: 'hours', reading: 3000 }]);
  });

  it('one time holds for the whole round', () => {
    const { saved } = played(aRound(), keys('<06:15~~~'));
    expect(saved.map((draft) => draft.at)).toEqual(['2026-02-03T06:15:00Z', '2026-02-03T06:15:00Z']);
    expect(text(played(aRound(), keys('<teatime~')).model)).toContain('"teatime" is not understood');
  });

  it('a full disk: the text stays in its row with what stood in the way, and Enter tries again', () => {
    const { model } = played(aRound(), keys('+1~<'), 'full');
    expect(text(model)).toContain('+1');
    expect(text(model)).toContain('NOT SAVED');
    expect(played(model, ['enter']).saved).toMatchObject([{ kind: 'hours', reading: 3413.6 }]);
  });

  it('is not begun where nothing can be saved, and says so before anything is typed', () => {
    const readOnly = { kind: 'cannot read', file: 'log', code: 'EROFS' } as const;
    const model = moved(aModel({}, aDocument(), { ...aMorning(), readOnly }), 'r');
    expect(pageOf(model).page).toBe('board');
    expect(model.notice).toContain('nothing can be saved');
  });

  it('Escape leaves what is saved, and says once what is not', () => {
    expect(pageOf(played(aRound(), keys('+1~^')).model).page).toBe('board');
    const warned = played(aRound(), keys('+1^')).model;
    expect(warned.notice).toContain('Enter saves it');
    expect(pageOf(moved(warned, 'escape')).page).toBe('board');
  });

  it('begun before the first answer, takes in what that finds pressing, and stays where it was', () => {
    const morning = aMorning();
    const entries = [...morning.entries, anEntry('dip', { fluid: 'gear-oil', level: 1.2 }, NOW - 3_600_000)];
    const loaded = aLoaded({
      boat: morning.boat,
      entries,
      condition: conditionAt(morning.boat, entries, NOW),
    });
    const early = moved(
      aFirstModel({ size: { columns: 120, rows: 60 } }),
      { is: 'loaded', result: good(loaded) },
      'r',
      'down',
    );
    expect(text(early)).toMatch(/> Fuel/u);
    expect(text(early)).not.toContain('Gear oil');
    const document = aDocument();
    const items = document.items.map((item) =>
      item.id === 'gear-oil' && item.kind === 'fluid' ? { ...item, lookAgain: { days: 0.5 } } : item,
    );
    const later = moved(early, { is: 'judged', of: loaded, document: { ...document, items } });
    expect(text(later)).toMatch(/> Fuel/u);
    expect(text(later)).toContain('Gear oil');
  });

  it('says what each entry did to the score, and at the end what the round changed', () => {
    const morning = aMorning();
    const { model, saved } = played(aRound({ size: { columns: 120, rows: 60 } }, morning), keys('+1~'));
    expect(text(model)).toContain('working');
    const entry = { ...saved[0]!, id: 'aaaaaa-1', writer: 'aaaaaa', n: 1, lc: 1001, rec: AT } as Entry;
    const loaded = { ...morning, entries: [...morning.entries, entry] };
    const before = aDocument();
    const document: VerdictDocument = {
      ...before,
      score: { ...before.score, boat: 91.4 },
      items: before.items.map((item) => (item.id === 'water' ? { ...item, state: 'watch' as const } : item)),
    };
    const after = moved(
      model,
      { is: 'loaded', result: good(loaded) },
      { is: 'judged', of: loaded, document },
    );
    expect(text(after)).toMatch(/saved 07:40, boat 97 -> 91: meter at 3413.6 h/u);
    expect(text(after)).toContain('Fresh water: fit -> watch');
    expect(text(after)).toContain('boat 97 -> 91 in 100');
  });
});

const HOSTILE = [
  '',
  'abc',
  '1e9',
  '-1',
  '\u0007\u001b[2J',
  'x'.repeat(3000),
  '測深',
  'שמן',
  '999999999999',
  '1/0',
  '+',
  '1/2 +',
  '=',
  '__proto__',
  'constructor',
  ';rm',
];

describe('whatever is typed', () => {
  it.each([...HOSTILE.entries()])(
    'no row falls over hostile text %i, and the page keeps its shape',
    (_, hostile) => {
      for (const size of SIZES) {
        let model = aRound({ size });
        for (let row = 0; row < 14; row += 1) {
          model = played(moved(model, { is: 'pasted', text: hostile }), ['enter']).model;
          expect(seen(model)).toHaveLength(size.rows);
          model = moved(model, 'ctrl u', 'down');
        }
      }
    },
  );
});

describe('left while the disk is still at it', () => {
  const entry = (draft: Draft, id: string): Entry => ({
    ...draft,
    id,
    writer: 'aaaaaa',
    n: 1,
    lc: 1000,
    rec: AT,
  });
  const asked = (model: Model, key: string) => update(model, { is: 'key', key });
  const draftsOf = ([request]: readonly Request[]) => {
    if (request?.do !== 'save') throw new Error('nothing was to be saved');
    return request.drafts;
  };

  it('what was struck is struck all the same once it is in the log', () => {
    const [saving, requests] = asked(aRound(), 'enter');
    const drafts = draftsOf(requests);
    const left = moved(saving, 'u', 'escape');
    expect(pageOf(left).page).toBe('board');
    const result = good([entry(drafts[0]!, 'aaaaaa-1')]);
    const [struck, then] = update(left, { is: 'saved', drafts, result });
    const strikes = draftsOf(then.filter((request) => request.do === 'save'));
    expect(strikes).toMatchObject([{ kind: 'strike', entry: 'aaaaaa-1' }]);
    const [, last] = update(struck, { is: 'saved', drafts: strikes, result: good([]) });
    expect(last).toEqual([{ do: 'load' }]);
  });

  it('what could not be saved comes back in its row, with what stood in the way', () => {
    const [saving, requests] = asked(moved(aRound(), 'down', '1', '.', '1'), 'enter');
    const drafts = draftsOf(requests);
    const left = moved(saving, 'escape');
    const result = bad({ kind: 'not saved', code: 'ENOSPC', text: '{}' });
    const [back] = update(left, { is: 'saved', drafts, result });
    expect(pageOf(back).page).toBe('round');
    expect(text(back)).toMatch(/> Gear oil .*1\.1▏/u);
    expect(text(back)).toContain('NOT SAVED');
    expect(draftsOf(asked(back, 'enter')[1])).toMatchObject([{ kind: 'dip', level: 1.1 }]);
  });
});

describe('what is under the row in hand', () => {
  const note = `${'Mind the belts and the shaft. '.repeat(12)}The last word.`;
  const { boat, entries } = aMorning();
  const loaded = aLoaded({
    boat: { ...boat, fluids: boat.fluids.map((fluid) => ({ ...fluid, note })) },
    entries,
    condition: conditionAt(boat, entries, NOW),
  });

  it('is read to its end on the smallest screen, and the row comes back with the next letter', () => {
    const row = moved(aRound({ size: SIZES[0] }, loaded), 'down');
    expect(text(row)).not.toContain('last word');
    let read = row;
    const pages: string[] = [];
    for (let page = 0; page < 6; page += 1) {
      read = moved(read, 'page down');
      pages.push(text(read));
    }
    expect(pages.join()).toMatch(/last\s+word/u);
    const end = Array(9)
      .fill('page down')
      .reduce((model: Model, key: string) => moved(model, key), read);
    expect(text(moved(end, 'page down'))).toBe(text(end));
    expect(text(moved(end, 'page up'))).not.toBe(text(end));
    expect(text(moved(end, '1'))).toContain('1▏');
  });

  it('are the cautions, where something is poured in', () => {
    const model = moved(aRound({ size: SIZES[2] }), 'down');
    expect(text(model)).not.toContain('engine stopped, key out');
    expect(text(moved(model, ...keys('1/2 +300ml')))).toContain('engine stopped, key out');
    expect(text(moved(model, ...keys('+.1')))).not.toContain('engine stopped, key out');
  });
});

describe('signs and per cent', () => {
  const { boat, entries } = aMorning();
  const cold = { ...boat.checks[0]!, id: 'freezer', name: 'Freezer', ask: 'number' as const, unit: 'C' };
  const { atLeast: _, ...freezer } = cold;
  const withFreezer = { ...boat, checks: [freezer, ...boat.checks] };
  const looked = [...entries, anEntry('check', { check: 'freezer', value: -18 }, ago(5))];
  const loaded = aLoaded({
    boat: withFreezer,
    entries: looked,
    condition: conditionAt(withFreezer, looked, NOW),
  });
  const entered = (id: string, typed: string) => {
    const model = aRound({}, loaded);
    const page = pageOf(model);
    const row = page.page === 'round' ? page.rows.findIndex(({ look }) => look.id === id) : -1;
    return played(model, [...Array(row).fill('down'), ...keys(`${typed}~`)]).saved;
  };

  it("below zero a sign is the number's own, above it a change", () => {
    expect(entered('freezer', '-17')).toMatchObject([{ check: 'freezer', value: -17 }]);
    expect(entered('house-bank', '-.2')).toMatchObject([{ check: 'house-bank', value: 12.5 }]);
  });

  it('40 of an anode is per cent, as on the page that is printed', () => {
    expect(entered('pencil', '40')).toMatchObject([{ anode: 'pencil', share: 0.4 }]);
    expect(entered('pencil', '1')).toMatchObject([{ anode: 'pencil', share: 1 }]);
    expect(entered('pencil', '900')).toEqual([]);
  });
});

describe('at every size', () => {
  it.each(SIZES)('the row in hand is in sight at $columns x $rows', (size) => {
    let model = aRound({ size });
    for (let row = 0; row < 13; row += 1) {
      expect(seen(model).filter((shown) => shown.startsWith('  > '))).toHaveLength(1);
      model = moved(model, 'down');
    }
  });

  it('a screen reader hears the row in hand and no other', () => {
    const told = spokenLines(moved(aRound(), 'down')).map(textOf);
    expect(told.join('\n')).toContain('2 of 13: Gear oil, 1.2 L, 5 days ago.');
    expect(told.join('\n')).not.toContain('Fresh water');
  });
});

describe('chunks', () => {
  it('the same keys in any chunks give the same screen: 500 scripts', () => {
    const alphabet = [
      '1',
      '2',
      '.',
      '+',
      '-',
      '/',
      ' ',
      'a',
      'u',
      'f',
      'o',
      'w',
      'e',
      't',
      '\r',
      '\r',
      '\t',
      '\u007f',
      '?',
      'q',
      'ñ',
      'é',
      '\u0015',
    ];
    const start = aRound();
    for (let script = 0; script < 500; script += 1) {
      const random = stream(script, 'round keys');
      const typed = Array.from(
        { length: 40 },
        () => alphabet[Math.floor(random.uniform() * alphabet.length)]!,
      ).join('');
      const cutAnyhow: string[] = [];
      for (let from = 0; from < typed.length; ) {
        const long = 1 + Math.floor(random.uniform() * 7);
        cutAnyhow.push(...keysOf(typed.slice(from, from + long), {}));
        from += long;
      }
      const whole = keysOf(typed, {});
      const each = [...typed].flatMap((letter) => keysOf(letter, {}));
      const screen = seen(played(start, whole).model);
      expect(seen(played(start, each).model)).toEqual(screen);
      expect(seen(played(start, cutAnyhow).model)).toEqual(screen);
    }
  });
});
