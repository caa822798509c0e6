import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Model } from '../../source/screens/model.ts';
import { FILE_UNITS, prefer } from '../../source/words/preferred.ts';
import { moved, seen } from '../helpers/a-model.ts';
import { sampleModel } from '../helpers/make-pictures.ts';
import { otherUnits } from '../helpers/other-units.ts';

const ZONE = 'America/New_York';
let board: Model;

beforeAll(async () => {
  prefer({ volume: 'US', height: 'ft', wind: 'm/s', clock: '12 h' }, () => ZONE);
  board = await sampleModel({ zone: ZONE });
});
afterAll(() => prefer(FILE_UNITS));

/** All that a page says, on a terminal long enough for it. */
function said(model: Model): string {
  return seen({ ...model, size: { columns: 160, rows: 2000 } }).join('\n');
}

describe('with US measures, feet, metres a second, a 12 h clock and a zone preferred', () => {
  it.each([
    ['the board', []],
    ['the answer', ['enter']],
    ['the weather', ['w']],
    ['a trial', ['w', '+']],
    ['the forecasts aboard', ['w', 'f']],
    ['a forecast as it is heard', ['w', 't']],
    ['the round', ['r']],
    ['the stores', ['s']],
    ['the shopping list', ['s', 'tab']],
    ['the log', ['L']],
    ['the weather as it is entered', ['i']],
    ['leaving', ['D']],
    ['the passage planned', ['P']],
  ])('%s says nothing in another unit', (_, keys) => {
    const words = said(moved(board, ...keys));
    expect(words.split('\n').filter((one) => one.trim() !== '').length).toBeGreaterThan(3);
    expect(otherUnits(words)).toEqual([]);
  });

  it('no page of an item says anything in another unit', () => {
    const items = board.boat.is === 'open' ? (board.boat.document?.items ?? []) : [];
    expect(items.length).toBeGreaterThan(40);
    const pages = items.map(({ id }) =>
      said({ ...board, pages: [board.pages[0], { page: 'item', id, from: 0 }] }),
    );
    expect(pages.flatMap(otherUnits)).toEqual([]);
  });
});
