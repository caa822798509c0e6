import type { Binding } from '../bindings.ts';

/** The keys of the stores, and the one that opens them. */
export const storesKeys: readonly Binding[] = [
  {
    keys: ['down'],
    shown: '↓',
    does: 'to the next store',
    on: ['stores'],
    act: 'next store',
  },
  { keys: ['up'], shown: '↑', does: 'to the store before', on: ['stores'], act: 'store before' },
  { keys: ['page down'], shown: 'PgDn', does: 'ten stores on', on: ['stores'], act: 'stores on' },
  { keys: ['page up'], shown: 'PgUp', does: 'ten stores back', on: ['stores'], act: 'stores back' },
  {
    keys: ['right'],
    shown: '→',
    does: 'to its own page',
    on: ['stores'],
    act: 'page of store',
  },
  {
    keys: ['tab'],
    shown: 'Tab',
    does: 'the shopping list, and back',
    short: 'Tab to buy',
    on: ['stores'],
    act: 'shopping list',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'forget what was typed; with nothing typed, back',
    short: 'Esc back',
    on: ['stores'],
    act: 'leave stores',
  },
  {
    keys: ['s'],
    shown: 's',
    does: 'the stores: what is aboard and where, what was used, what to buy',
    short: 's stores',
    on: ['board', 'item', 'engine', 'answer', 'weather', 'trouble'],
    act: 'stores',
  },
];
