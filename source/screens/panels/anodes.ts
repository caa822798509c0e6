import { amountWords } from '../../words/say.ts';
import type { Panel } from '../panel.ts';
import type { ShownItem } from '../shown-item.ts';
import { itemsOfKind, type Sight } from '../sight.ts';
import { soonWords } from '../when.ts';

type Anode = Extract<ShownItem, { kind: 'anode' }>;

export function anodesPanel(sight: Sight): Panel<Anode> {
  return {
    part: 'anodes',
    title: 'ANODES',
    heads: ['left', 'reaches its limit'],
    items: itemsOfKind(sight, 'anode'),
    cells: ({ now, reachesLimit }) => [
      now ? amountWords(now.value, now.unit) : '-',
      reachesLimit ? `about ${soonWords(Date.parse(reachesLimit.p50), sight.at, sight.model.zone)}` : '',
    ],
    onPoint: [0],
    mayGo: [1],
    one: 'anode',
    many: 'anodes',
  };
}
