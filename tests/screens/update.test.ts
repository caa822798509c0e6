import { describe, expect, it } from 'vitest';
import { pageOf } from '../../source/screens/model.ts';
import { update } from '../../source/screens/update.ts';
import { bad } from '../../source/trouble.ts';
import { AT, aDocument, aLoaded } from '../helpers/a-document.ts';
import { aFirstModel, aModel, moved, seen } from '../helpers/a-model.ts';

const MINUTE_MS = 60_000;
const key = (name: string) => ({ is: 'key', key: name }) as const;

describe('reading and reckoning', () => {
  it('a boat read is reckoned, and the frame before says so', () => {
    const loaded = aLoaded();
    const [model, requests] = update(aFirstModel(), { is: 'loaded', result: { ok: true, value: loaded } });
    expect(requests).toEqual([{ do: 'judge', loaded }]);
    expect(seen(model).join('\n')).toContain('WORKING');
  });

  it('an answer to an older reading is dropped', () => {
    const older = aLoaded();
    const newer = aLoaded();
    const model = moved(
      aFirstModel(),
      { is: 'loaded', result: { ok: true, value: older } },
      { is: 'loaded', result: { ok: true, value: newer } },
    );
    expect(moved(model, { is: 'judged', of: older, document: aDocument() })).toBe(model);
  });

  it('the old answer stays on the page while a new one is worked out', () => {
    const model = moved(aModel(), { is: 'loaded', result: { ok: true, value: aLoaded() } });
    const page = seen(model).join('\n');
    expect(page).toContain(' HOLD ');
    expect(page).toContain('working');
  });

  it('a boat that cannot be opened shows why, and reading it again may open it', () => {
    const trouble = { kind: 'cannot read', file: 'boat.json', code: 'EACCES' } as const;
    const model = moved(aFirstModel(), { is: 'loaded', result: bad(trouble) });
    expect(seen(model).join('\n')).toContain('boat.json');
    const loaded = aLoaded();
    const opened = moved(model, { is: 'loaded', result: { ok: true, value: loaded } });
    expect(opened.boat.is).toBe('open');
  });

  it('an answer older than five minutes is made anew, a younger one is not', () => {
    const model = aModel();
    const at = Date.parse(AT);
    expect(update(model, { is: 'tick', now: at + 4 * MINUTE_MS })[1]).toEqual([]);
    expect(update(model, { is: 'tick', now: at + 5 * MINUTE_MS })[1]).toEqual([{ do: 'load' }]);
  });

  it('a change of the log is read at once', () => {
    expect(update(aModel(), { is: 'log changed' })[1]).toEqual([{ do: 'load' }]);
  });

  it('an item that became worse says NEW until it is looked at', () => {
    const before = aDocument();
    const items = before.items.map((item) =>
      item.id === 'coolant' ? { ...item, state: 'unfit' as const, reason: 'Under the low mark.' } : item,
    );
    const loaded = aLoaded();
    const model = moved(
      aModel({ size: { columns: 120, rows: 50 } }),
      { is: 'loaded', result: { ok: true, value: loaded } },
      { is: 'judged', of: loaded, document: aDocument({ items }) },
    );
    expect(seen(model).join('\n')).toContain('NEW, unfit: under the low mark');
    expect([...model.fresh]).toEqual(['coolant']);
    const there = moved({ ...model, chosen: 'item:coolant' }, 'enter', 'escape');
    expect(there.fresh.size).toBe(0);
  });
});

describe('moving about', () => {
  it('nothing is chosen until the first move, and the choice stops at the ends', () => {
    const model = aModel();
    expect(model.chosen).toBeNull();
    expect(moved(model, 'j').chosen).toBe('verdict');
    expect(moved(model, 'j', 'k', 'k').chosen).toBe('verdict');
    const last = moved(model, 'G').chosen;
    expect(moved(model, 'G', 'j', 'j').chosen).toBe(last);
  });

  it('arrows and letters are the same keys', () => {
    const model = aModel();
    expect(moved(model, 'down', 'down', 'up')).toEqual(moved(model, 'j', 'j', 'k'));
    expect(moved(model, 'tab', 'right')).toEqual(moved(model, 'l', 'l'));
  });

  it('Tab goes from part to part and back', () => {
    const model = moved(aModel(), 'tab', 'tab', 'tab');
    expect(moved(model, 'tab', 'back tab').chosen).toBe(model.chosen);
  });

  it('Enter turns to the item chosen, Escape back, the choice kept', () => {
    const chosen = { ...aModel(), chosen: 'item:gear-oil' };
    const turned = moved(chosen, 'enter');
    expect(pageOf(turned)).toEqual({ page: 'item', id: 'gear-oil', from: 0 });
    const back = moved(turned, 'escape');
    expect(pageOf(back)).toEqual({ page: 'board' });
    expect(back.chosen).toBe('item:gear-oil');
  });

  it('Enter with nothing chosen tells why', () => {
    expect(pageOf(moved(aModel(), 'enter')).page).toBe('answer');
  });

  it('Enter on a fold opens it, and again closes it', () => {
    const model = { ...aModel(), chosen: 'fold:fluids:fit' };
    const open = moved(model, 'enter');
    expect(seen({ ...open, chosen: 'item:fuel' }).join('\n')).toContain('> · Fuel');
    expect(moved(open, 'enter').unfolded.size).toBe(0);
  });

  it('from one item to the next in the order of the boat file', () => {
    const model = moved({ ...aModel(), chosen: 'item:gear-oil' }, 'enter', 'l');
    expect(pageOf(model)).toMatchObject({ id: 'coolant' });
    expect(pageOf(moved(model, 'h', 'h', 'h'))).toMatchObject({ id: 'gear-oil' });
  });

  it('a page scrolls to its end and no further, so that one key up moves it', () => {
    const model = moved({ ...aModel(), chosen: 'item:gear-oil' }, 'enter', 'G');
    const { from } = pageOf(model) as { from: number };
    expect(from).toBeGreaterThan(0);
    expect(pageOf(moved(model, 'j', 'j'))).toMatchObject({ from });
    expect(pageOf(moved(model, 'k'))).toMatchObject({ from: from - 1 });
    expect(pageOf(moved(model, 'g'))).toMatchObject({ from: 0 });
  });

  it('the keys page lies on top of any page and goes away again', () => {
    const item = moved({ ...aModel(), chosen: 'item:gear-oil' }, 'enter');
    expect(pageOf(moved(item, '?')).page).toBe('keys');
    expect(moved(item, '?', '?')).toEqual(item);
    expect(moved(item, '?', 'escape')).toEqual(item);
  });

  it('back on the board does nothing worse than choose nothing', () => {
    expect(moved(aModel(), 'j', 'escape', 'escape').chosen).toBeNull();
  });
});

describe('asking the world', () => {
  it('q and Ctrl+C leave', () => {
    expect(update(aModel(), key('q'))[1]).toEqual([{ do: 'quit' }]);
    expect(update(aFirstModel(), key('ctrl c'))[1]).toEqual([{ do: 'quit' }]);
  });

  it('p goes through the palettes and keeps each', () => {
    const [model, requests] = update(aModel(), key('p'));
    expect(model.palette).toBe('night');
    expect(requests).toEqual([{ do: 'keep palette', palette: 'night' }]);
  });

  it('without colour the page is plain and p says why it stays so', () => {
    const model = aModel({ colour: false, palette: 'night' });
    expect(model.palette).toBe('plain');
    const [next, requests] = update(model, key('p'));
    expect(next.palette).toBe('plain');
    expect(next.notice).toContain('colour');
    expect(requests).toEqual([]);
  });

  it('a notice lasts until the next key', () => {
    expect(moved(aModel(), 'p').notice).toBe('night');
    expect(moved(aModel(), 'p', 'j').notice).toBeNull();
  });

  it('a paste is not taken for keys', () => {
    const [model, requests] = update(aModel(), { is: 'pasted', text: 'a page' });
    expect(requests).toEqual([]);
    expect(model.notice).toContain('paste');
  });

  it('a key that means nothing here changes nothing', () => {
    const model = aModel();
    expect(moved(model, 'z')).toEqual(model);
  });
});
