import type { Binding } from '../bindings.ts';

/** The keys of the round, and the one that opens it. */
export const roundKeys: readonly Binding[] = [
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'save the row, and on to the next; an empty row was seen and is unchanged. What is in doubt is asked about once',
    short: 'Enter same',
    foremost: true,
    on: ['round'],
    act: 'save row',
  },
  {
    keys: ['tab', 'down'],
    shown: 'Tab ↓',
    does: 'to the next row; nothing is logged of one passed over: not looked at',
    short: '↓ not looked at',
    on: ['round'],
    act: 'round next',
  },
  {
    keys: ['back tab', 'up'],
    shown: 'Shift+Tab ↑',
    does: 'to the row before; above the first is the time of the whole round, for one read off paper',
    on: ['round'],
    act: 'round before',
  },
  {
    keys: ['a'],
    shown: 'a',
    does: 'in an empty row: all the rest seen and unchanged, but for what was never looked at. The looks before leaving only from one of them',
    short: 'a rest same',
    on: ['round'],
    act: 'rest unchanged',
  },
  {
    keys: ['u'],
    shown: 'u',
    does: 'in an empty row: strike what was entered last in this round; again for what came before',
    short: 'u undo',
    on: ['round'],
    act: 'strike last',
  },
  {
    keys: ['page down'],
    shown: 'PgDn',
    does: 'more of what is under the row in hand',
    on: ['round'],
    act: 'page down',
  },
  { keys: ['page up'], shown: 'PgUp', does: 'back up to it', on: ['round'], act: 'page up' },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'back; every row entered is saved',
    short: 'Esc back',
    on: ['round'],
    act: 'leave round',
  },
  {
    keys: ['r'],
    shown: 'r',
    does: 'the morning round: everything due a look, in walking order',
    short: 'r round',
    on: ['board', 'item', 'engine'],
    act: 'round',
  },
];
