import { amountWords, badHundred } from '../../words/say.ts';
import type { Panel } from '../panel.ts';
import type { ShownItem } from '../shown-item.ts';
import { itemsOfKind, type Sight } from '../sight.ts';

type Spare = Extract<ShownItem, { kind: 'spare' }>;

export function storesPanel(sight: Sight): Panel<Spare> {
  return {
    part: 'stores',
    title: 'STORES',
    heads: ['aboard', 'may run short', ''],
    items: itemsOfKind(sight, 'spare'),
    cells: ({ count, unit, shortChance, buy }) => [
      count === null ? '-' : amountWords(count, unit),
      shortChance === null ? '' : badHundred(shortChance),
      buy > 0 ? `buy ${amountWords(buy, unit)}` : '',
    ],
    onPoint: [0],
    mayGo: [1],
    one: 'store',
    many: 'stores',
  };
}
