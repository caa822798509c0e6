import { describe, expect, it } from 'vitest';
import { textOf } from '../../../source/screens/lines.ts';
import { pageOf } from '../../../source/screens/model.ts';
import { spokenLines } from '../../../source/screens/spoken.ts';
import { AT, aDocument } from '../../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { aWorld, dueBoat, type World } from '../../helpers/a-round.ts';
import { anEntry } from '../../helpers/an-entry.ts';

/** The round opened, at the row of that id. */
function at(id: string, world = aWorld()): World {
  world.press('r');
  world.press(...Array(world.round().rows.findIndex(({ look }) => look.id === id)).fill('down'));
  return world;
}

const page = (world: World) => seen(world.model()).join('\n');
const kinds = (world: World) => world.log().map(({ kind }) => kind);

describe('the round', () => {
  it('has everything due a look, in three passes, with what was found last', () => {
    const world = aWorld();
    world.press('r');
    expect(world.round().rows.map(({ look }) => look.id)).toEqual([
      'main',
      'gear-oil',
      'fuel',
      'water',
      'pencil',
      'house-bank',
      'start-bank',
      'freezer',
      'bilge',
      'charging',
      'seacocks',
      'raw-water',
    ]);
    const text = page(world);
    for (const words of ['ENGINE STOPPED', 'ENGINE RUNNING', 'last 3412.6 h, 4 days ago', 'last 12.6 V'])
      expect(text).toContain(words);
  });

  it('Enter in an empty row is seen and unchanged; passing a row is not looking at it', () => {
    const world = aWorld();
    world.press('r', 'enter', 'down', 'enter');
    world.settle();
    expect(world.log()).toMatchObject([
      { kind: 'hours', engine: 'main', reading: 3412.6 },
      { kind: 'dip', fluid: 'fuel', level: 120 },
    ]);
    expect(page(world)).toContain('3412.6 h, unchanged, saved');
  });

  it('a fluid takes level, poured in and drip in one line', () => {
    const world = at('gear-oil');
    world.press('"1/2 +300ml drops"');
    expect(page(world)).toContain('Enter logs: Gear oil: 0.3 L poured in, from Gear oil in cans.');
    world.press('enter');
    world.settle();
    expect(world.log()).toMatchObject([
      { kind: 'dip', fluid: 'gear-oil', share: 0.5 },
      { kind: 'topup', fluid: 'gear-oil', amount: 0.3, from: 'gear-oil-can' },
      { kind: 'leak', item: 'gear-oil', class: 'drops' },
    ]);
  });

  it.each([
    ['main', '+.7', { reading: 3413.3 }],
    ['main', '3 413,5', { reading: 3413.5 }],
    ['main', '+45 min', { reading: 3413.35 }],
    ['gear-oil', '+.05', { level: 1.25 }],
    ['gear-oil', '-100 ml', { level: 1.1 }],
    ['gear-oil', 'off', { off: 'below' }],
    ['gear-oil', 'full', { share: 1 }],
    ['gear-oil', 'low', { share: 0 }],
    ['gear-oil', '1,2', { level: 1.2 }],
    ['gear-oil', 'wet', { kind: 'leak', class: 'wet' }],
    ['pencil', '40', { share: 0.4 }],
    ['pencil', '1/2 flakes', { share: 0.5, flakes: true }],
    ['pencil', '-10%', { share: 0.5 }],
    ['pencil', '35 g', { massKg: 0.035 }],
    ['house-bank', '12,4', { value: 12.4 }],
    ['house-bank', '-.2', { value: 12.4 }],
    ['freezer', '-17', { value: -17 }],
    ['bilge', 'n', { ok: false }],
    ['bilge', 'well', { ok: true }],
  ])('%s reads %j', (id, typed, fields) => {
    const world = at(id);
    world.press(`"${typed}"`, 'enter');
    world.settle();
    expect(world.log()).toMatchObject([fields]);
  });

  it('a is all the rest that is due and was looked at before, counted by pass', () => {
    const { boat, entries } = dueBoat();
    const never = dueBoat({
      boat,
      entries: entries.filter((entry) => entry.kind !== 'check' || entry.check !== 'bilge'),
    });
    const world = aWorld(never);
    world.press('r', 'down', '"1.1"', 'enter', '"5"', 'down', 'a');
    expect(world.model().notice).toBe(
      'seen and unchanged: 6 engine stopped, 1 engine running, 2 before leaving; 1 to be typed; 1 typed in, not saved',
    );
    world.settle();
    expect(world.log()).toHaveLength(10);
    expect(world.log().some((entry) => entry.kind === 'check' && entry.check === 'bilge')).toBe(false);
    expect(page(world)).toContain('10 of 12 looked at');
  });

  it('u strikes what was saved last, a whole a at once, and brings back what was typed', () => {
    const world = at('gear-oil');
    world.press('"1.1"', 'enter', 'a');
    world.settle();
    world.press('u');
    world.settle();
    expect(kinds(world)).toEqual(['dip']);
    world.press('u');
    world.settle();
    expect(kinds(world)).toEqual([]);
    expect(world.round().rows[1]).toMatchObject({ field: { text: '1.1' } });
    world.press('ctrl u', 'u');
    expect(world.model().notice).toBe('nothing of this round is saved');
  });

  it('u before the disk has answered strikes it once it has', () => {
    const world = aWorld();
    world.press('r', 'enter', 'u');
    world.settle();
    expect(world.log()).toEqual([]);
  });

  it('a row typed again takes the place of what was saved of it', () => {
    const world = at('gear-oil');
    world.press('"1.1"', 'enter', 'up', '"1.15"', 'enter');
    world.settle();
    expect(world.log()).toMatchObject([{ kind: 'dip', level: 1.15 }]);
  });

  it('asks once about what is in doubt, in its row; Enter again saves it', () => {
    const world = at('gear-oil');
    world.press('"900"', 'enter');
    world.settle();
    expect(page(world)).toContain('Enter again saves it');
    expect(world.log()).toEqual([]);
    world.press('enter');
    world.settle();
    expect(world.log()).toMatchObject([{ kind: 'dip', level: 900 }]);
  });

  it('what was never looked at, or topped up since, must be typed', () => {
    const { boat, entries } = dueBoat();
    const poured = anEntry('topup', { fluid: 'gear-oil', amount: 0.1 }, '2026-02-01T08:00:00Z');
    const world = at('gear-oil', aWorld(dueBoat({ boat, entries: [...entries, poured] })));
    world.press('enter');
    expect(world.model().notice).toBe('topped up since it was read: type what it reads');
    const bare = aWorld(dueBoat({ boat, entries: [] }));
    bare.press('r', 'enter');
    expect(bare.model().notice).toBe('never looked at before: type what it reads');
    bare.press('a');
    bare.settle();
    expect(bare.log()).toEqual([]);
  });

  it('one moment for a round read off paper, and what had been found last by then', () => {
    const world = aWorld();
    world.press('r', 'up', '"yesterday 18:00"', 'enter', 'enter', '"+.1"', 'enter');
    world.settle();
    expect(world.log()).toMatchObject([
      { kind: 'hours', at: '2026-02-02T18:00:00Z' },
      { kind: 'dip', at: '2026-02-02T18:00:00Z', level: 1.3 },
    ]);
  });

  it.each(['teatime', 'tomorrow', '2026-02-04 07:00', '1e9'])(
    '%j is no moment of a round, and is kept',
    (typed) => {
      const world = aWorld();
      world.press('r', 'up', `"${typed}"`, 'enter');
      expect(world.round()).toMatchObject({ at: 0, when: { field: { text: typed }, moment: null } });
      expect(page(world)).toContain('is not understood');
    },
  );

  it('what could not be saved is in its row again with what stood in the way', () => {
    const world = at('gear-oil');
    world.full(true);
    world.press('"1/2 +300ml"', 'enter');
    world.settle();
    expect(world.round()).toMatchObject({ at: 2, saves: [] });
    expect(page(world)).toContain('1/2 +300ml');
    expect(page(world)).toContain('NOT SAVED');
    world.full(false);
    world.press('enter');
    world.settle();
    expect(kinds(world)).toEqual(['dip', 'topup']);
  });

  it('Escape leaves; what was saved before stays, what was only typed is not', () => {
    const world = aWorld();
    world.press('r', 'enter', '"1.1"', 'escape');
    world.settle();
    expect(pageOf(world.model()).page).toBe('board');
    expect(kinds(world)).toEqual(['hours']);
  });

  it('left by mistake it is gone on with; later it is drawn up afresh', () => {
    const world = at('gear-oil');
    world.press('enter', '"12"', 'escape', 'r');
    expect(world.round()).toMatchObject({ at: 3, saves: [{ row: 'gear-oil' }] });
    expect(page(world)).toContain('12▏');
    world.press('escape');
    world.settle();
    world.send({ is: 'key', key: 'r', now: Date.parse(AT) + 3_600_000 });
    expect(world.round()).toMatchObject({ at: 1, saves: [] });
  });

  it('left before the disk answered, it comes back with what could not be saved', () => {
    const world = at('gear-oil');
    world.full(true);
    world.press('"1.1"', 'enter', 'escape');
    expect(pageOf(world.model()).page).toBe('board');
    world.settle();
    expect(world.round()).toMatchObject({ at: 2 });
    expect(page(world)).toContain('1.1▏');
    expect(page(world)).toContain('NOT SAVED');
  });

  it('says how the boat score moves, and that it is working until then', () => {
    const loaded = dueBoat();
    const model = moved(aModel({}, aDocument(), loaded), 'r');
    expect(seen(model)[0]).toContain('boat 97');
    const again = moved(model, { is: 'loaded', result: { ok: true, value: loaded } });
    expect(seen(again)[0]).toContain('working');
    const score = { ...aDocument().score, boat: 92.4 };
    expect(seen(moved(again, { is: 'judged', of: loaded, document: aDocument({ score }) }))[0]).toContain(
      'boat 97 -> 92',
    );
  });

  it('opened before there is an answer, it gets the rows the answer alone makes due', () => {
    const loaded = dueBoat();
    const { boat, entries } = loaded;
    const fresh = dueBoat({
      boat,
      entries: [...entries, anEntry('dip', { fluid: 'gear-oil', level: 1.12 }, '2026-02-03T07:00:00Z')],
    });
    const document = aDocument();
    const items = document.items.map((item) =>
      item.id === 'gear-oil' && item.kind === 'fluid' ? { ...item, lookAgain: { days: 0.5 } } : item,
    );
    const before = moved(
      { ...aModel(), boat: { is: 'open', loaded: fresh, document: null, working: true } },
      'r',
      'down',
    );
    const after = moved(before, { is: 'judged', of: fresh, document: { ...document, items } });
    const ids = (model: typeof after) => {
      const top = pageOf(model);
      return top.page === 'round' ? [top.rows.map(({ look }) => look.id), top.rows[top.at - 1]?.look.id] : [];
    };
    expect(ids(before)[0]).not.toContain('gear-oil');
    expect((ids(after)[0] as string[]).slice(0, 3)).toEqual(['main', 'gear-oil', 'fuel']);
    expect(ids(after)[1]).toBe(ids(before)[1]);
  });

  it('where nothing can be saved that is said before anything is typed', () => {
    const world = aWorld(dueBoat({ readOnly: { kind: 'cannot read', file: 'log', code: 'EROFS' } }));
    world.press('r');
    expect(pageOf(world.model()).page).toBe('board');
    expect(world.model().notice).toContain('nothing can be saved here');
  });

  it('twelve readings of which four changed are at most 30 keys', () => {
    const world = aWorld();
    world.press('r', '"+.7"', 'enter', '"1/2"', 'enter', 'down', 'down', 'down', '"+.1"', 'enter');
    world.press('down', 'down', '"n"', 'enter', 'a');
    world.settle();
    expect(world.log()).toHaveLength(12);
    expect(world.log()).toMatchObject([
      { reading: 3413.3 },
      { fluid: 'gear-oil', share: 0.5 },
      { check: 'house-bank', value: 12.7 },
      { check: 'bilge', ok: false },
      ...Array(8).fill({}),
    ]);
    expect(world.pressed()).toBeLessThanOrEqual(30);
  });

  it('at every size the row in hand is on the screen with what is typed in it', () => {
    for (const size of SIZES) {
      const world = aWorld();
      world.send({ is: 'resized', size });
      world.press('r');
      for (const _ of world.round().rows) {
        world.press('"7"');
        expect(page(world)).toMatch(/>.*7▏/u);
        world.press('backspace', 'down');
      }
    }
  });

  it('PgDn shows what lies below, never past the end, and any key typed comes back', () => {
    const world = aWorld();
    world.send({ is: 'resized', size: { columns: 40, rows: 12 } });
    world.press('r', ...Array(20).fill('page down'));
    expect(page(world)).not.toContain('↓');
    const last = world.round().from;
    world.press('page down');
    expect(world.round().from).toBe(last);
    world.press('page up');
    expect(world.round().from).toBeLessThan(last);
    world.press('"1"');
    expect(page(world)).toContain('1▏');
  });

  it('for a screen reader it is the row in hand, in sentences', () => {
    const world = at('gear-oil');
    world.press('"1/2"');
    const heard = spokenLines(world.model()).map(textOf);
    expect(heard[0]).toBe('Round, 0 of 12 looked at. Score: boat 97.');
    expect(heard[1]).toBe('Row 2 of 12, engine stopped: Gear oil; last 1.2 L, 4 days ago. Now typing: 1/2.');
    expect(heard.join('\n')).toContain('Enter logs: Gear oil: 50 % of the way from low to full.');
    expect(heard.join('\n')).not.toContain('Fresh water');
    expect(heard.join('\n')).not.toContain('▏');
  });
});
