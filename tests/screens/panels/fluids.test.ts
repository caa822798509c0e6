import { describe, expect, it } from 'vitest';
import { textOf } from '../../../source/screens/lines.ts';
import type { Model } from '../../../source/screens/model.ts';
import { panelLines } from '../../../source/screens/panel.ts';
import { fluidsPanel } from '../../../source/screens/panels/fluids.ts';
import { sightOf } from '../../../source/screens/sight.ts';
import { aDocument, aFluid } from '../../helpers/a-document.ts';
import { aModel, SIZES, seen } from '../../helpers/a-model.ts';

const unread = aFluid({
  id: 'gear-oil',
  name: 'Gear oil',
  now: null,
  lookedAt: null,
  state: 'unseen',
  chance: 1,
  goodUntil: 'beyond',
});
const model: Model = aModel({ size: SIZES[2] }, aDocument({ items: [unread] }));

describe('a fluid nobody has looked at', () => {
  it('is given no hour it is good until, on the board and on its page, and no chance', () => {
    const board = seen(model).join('\n');
    expect(board).toMatch(/Gear oil +- +-/u);
    const page = seen({ ...model, pages: [...model.pages, { page: 'item', id: unread.id, from: 0 }] }).join(
      '\n',
    );
    expect(page).toContain('to be kept');
    for (const words of [board, page]) expect(words).not.toContain('beyond');
    expect(page).not.toContain('in 100');
  });

  it('looked at, is given both', () => {
    const known = { ...unread, lookedAt: '2026-02-03T07:40:00Z', state: 'fit' as const };
    const read = aModel({ size: SIZES[2] }, aDocument({ items: [known] }));
    const page = seen({ ...read, pages: [...read.pages, { page: 'item', id: unread.id, from: 0 }] }).join(
      '\n',
    );
    expect(page).toContain('good until');
    expect(page).toContain('100 in 100');
  });
});

describe('a panel of which every row is folded away', () => {
  it('has its title, and no heads over columns that are not there', () => {
    const read = { lookedAt: '2026-02-03T07:40:00Z', state: 'fit' as const };
    const fluids = ['Gear oil', 'Engine oil'].map((name, at) =>
      aFluid({ ...unread, ...read, id: `${at}`, name }),
    );
    const sight = sightOf(aModel({}, aDocument({ items: fluids })))!;
    const lines = panelLines(sight, fluidsPanel(sight), 76);
    expect(lines(true).map(textOf)).toEqual(['  FLUIDS', expect.stringContaining('2 fluids, all fit')]);
    expect(textOf(lines(false)[0]!)).toMatch(/^ {2}FLUIDS +now/u);
  });
});
