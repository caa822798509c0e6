import { amountWords } from '../../words/say.ts';
import { levelBar } from '../charts/level-bar.ts';
import type { Panel } from '../panel.ts';
import type { ShownItem } from '../shown-item.ts';
import { itemsOfKind, type Sight } from '../sight.ts';
import { soonWords } from '../when.ts';

type Fluid = Extract<ShownItem, { kind: 'fluid' }>;

const BAR_CELLS = 10;

export function fluidsPanel(sight: Sight): Panel<Fluid> {
  return {
    part: 'fluids',
    title: 'FLUIDS',
    heads: ['now', `low${' '.repeat(BAR_CELLS - 5)}full`, 'good until'],
    items: itemsOfKind(sight, 'fluid'),
    cells: (fluid) => [
      fluid.now ? amountWords(fluid.now.value, fluid.now.unit, fluid.full) : '-',
      fluid.now
        ? levelBar({ ...fluid, now: fluid.now.value, end: fluid.atEnd?.mean ?? null }, BAR_CELLS)
        : ' '.repeat(BAR_CELLS + 2),
      fluid.now ? goodUntilWords(sight, fluid) : '-',
    ],
    onPoint: [0],
    mayGo: [2, 1],
    one: 'fluid',
    many: 'fluids',
  };
}

/** `Sun 04:00`, `beyond` what is looked at, or `not now`; nothing until it is reckoned. */
export function goodUntilWords({ at, model }: Sight, { goodUntil, state }: ShownItem): string {
  if (state === null) return '';
  if (goodUntil === null) return 'not now';
  return goodUntil === 'beyond' ? 'beyond' : soonWords(Date.parse(goodUntil), at, model.zone);
}
