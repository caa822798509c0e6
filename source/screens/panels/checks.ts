import { amountWords, dayWords } from '../../words/say.ts';
import type { Panel } from '../panel.ts';
import type { ShownItem } from '../shown-item.ts';
import { itemsOfKind, type Sight } from '../sight.ts';
import { agoWords } from '../when.ts';
import { copyLines } from './copy.ts';

/** The board cuts it to the width of the panel. */
const LEAD_COLUMNS = 40;

type Look = Extract<ShownItem, { kind: 'check' | 'dated' }>;

export function checksPanel(sight: Sight): Panel<Look> {
  return {
    part: 'checks',
    title: 'CHECKS AND DATES',
    heads: ['', ''],
    items: [...itemsOfKind(sight, 'check'), ...itemsOfKind(sight, 'dated')],
    cells: (item) => (item.kind === 'check' ? checkCells(sight, item) : datedCells(item)),
    onPoint: [],
    mayGo: [1],
    one: 'check',
    many: 'checks',
    lead: copyLines(sight, 'checks', LEAD_COLUMNS),
  };
}

function checkCells({ at, model }: Sight, { now, ok, lookedAt }: Look & { kind: 'check' }): string[] {
  const answer = now
    ? amountWords(now.value, now.unit)
    : ok === null
      ? '-'
      : ok
        ? 'as it should be'
        : 'not so';
  return [answer, lookedAt === null ? '' : agoWords(Date.parse(lookedAt), at, model.zone)];
}

function datedCells({ expires }: Look & { kind: 'dated' }): string[] {
  return [expires === null ? '-' : `until ${dayWords(Date.parse(expires), 'UTC')}`, ''];
}
