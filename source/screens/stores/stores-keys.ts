import type { Binding } from '../bindings.ts';
import { pageOf } from '../model.ts';

const isListed: Binding['when'] = (model) => {
  const page = pageOf(model);
  return page.page === 'stores' && !page.shopping;
};

/** The keys of the stores but those that open a form. Letters are typed there. */
export const storesBindings: readonly Binding[] = [
  {
    keys: ['s'],
    shown: 's',
    does: 'the stores: find, use, put aboard, count; the shopping list',
    short: 's stores',
    on: ['board', 'item', 'answer', 'weather', 'trouble'],
    act: 'stores',
  },
  {
    keys: ['down'],
    shown: '↓',
    does: 'to the next of the stores; letters find',
    short: '↑↓ choose',
    on: ['stores'],
    when: isListed,
    act: 'next spare',
  },
  {
    keys: ['up'],
    shown: '↑',
    does: 'to the one before',
    on: ['stores'],
    when: isListed,
    act: 'spare before',
  },
  {
    keys: ['page down'],
    shown: 'PgDn',
    does: 'ten further on',
    on: ['stores'],
    when: isListed,
    act: 'spares on',
  },
  { keys: ['page up'], shown: 'PgUp', does: 'ten back', on: ['stores'], when: isListed, act: 'spares back' },
  {
    keys: ['tab', 'back tab'],
    shown: 'Tab',
    does: 'the shopping list, and back',
    short: 'Tab shopping list',
    on: ['stores'],
    act: 'turn shopping',
  },
  {
    keys: ['right'],
    shown: '→',
    does: 'turn to its page',
    short: '→ its page',
    on: ['stores'],
    when: isListed,
    act: 'open spare',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'out of the shopping list, or find nothing any more, or back',
    short: 'Esc back',
    on: ['stores'],
    act: 'leave stores',
  },
];
