import type { Binding } from '../bindings.ts';
import { type Model, pageOf } from '../model.ts';

/** Whether a leg of a passage is in hand. */
function isOnLeg(model: Model): boolean {
  const page = pageOf(model);
  return page.page === 'boat item' && /^leg/u.test(page.rows[page.at]?.holds.is ?? '');
}

/** The keys of the boat page and of an item's fields, and the one that opens it. */
export const boatKeys: readonly Binding[] = [
  {
    keys: ['b'],
    shown: 'b',
    does: 'what the boat is made of: add, change, retire',
    short: 'b boat',
    on: ['board'],
    act: 'boat',
  },
  {
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'to the next item',
    short: '↑↓ choose',
    on: ['boat'],
    act: 'next part',
  },
  { keys: ['up', 'k'], shown: '↑ k', does: 'to the item before', on: ['boat'], act: 'part before' },
  { keys: ['page down', 'space'], shown: 'PgDn Space', does: 'ten items on', on: ['boat'], act: 'parts on' },
  { keys: ['page up'], shown: 'PgUp', does: 'ten items back', on: ['boat'], act: 'parts back' },
  {
    keys: ['tab', 'right', 'l'],
    shown: 'Tab → l',
    does: 'to the next kind: the limits, anchorages and passages stand last',
    short: 'Tab kind',
    on: ['boat'],
    act: 'next kind',
  },
  {
    keys: ['back tab', 'left', 'h'],
    shown: 'Shift+Tab ← h',
    does: 'to the kind before',
    on: ['boat'],
    act: 'kind before',
  },
  { keys: ['g', 'home'], shown: 'g Home', does: 'to the first', on: ['boat'], act: 'first part' },
  { keys: ['G', 'end'], shown: 'G End', does: 'to the last', on: ['boat'], act: 'last part' },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'change it',
    short: 'Enter change',
    foremost: true,
    on: ['boat'],
    act: 'change part',
  },
  { keys: ['a'], shown: 'a', does: 'add another of its kind', short: 'a add', on: ['boat'], act: 'add part' },
  {
    keys: ['x'],
    shown: 'x',
    does: 'retire it, at the second time: it leaves the sums, its entries stay in the log',
    short: 'x retire',
    on: ['boat'],
    act: 'retire part',
  },
  {
    keys: ['E'],
    shown: 'E',
    does: 'boat.json in your editor ($VISUAL, $EDITOR, else vi), then read again',
    short: 'E editor',
    on: ['boat', 'trouble'],
    act: 'edit boat',
  },
  { keys: ['escape', 'backspace'], shown: 'Esc', does: 'back', short: 'Esc back', on: ['boat'], act: 'back' },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'save it in boat.json; what was not changed stays as it was written',
    short: 'Enter save',
    foremost: true,
    on: ['boat item'],
    act: 'save item',
  },
  {
    keys: ['tab', 'down'],
    shown: 'Tab ↓',
    does: 'to the next line',
    short: '↑↓ lines',
    on: ['boat item'],
    act: 'next boat field',
  },
  {
    keys: ['back tab', 'up'],
    shown: 'Shift+Tab ↑',
    does: 'to the line before',
    on: ['boat item'],
    act: 'boat field before',
  },
  {
    keys: ['ctrl n'],
    shown: 'Ctrl+N',
    does: 'a leg more, before the one in hand; one that is emptied goes',
    short: 'Ctrl+N leg',
    on: ['boat item'],
    when: isOnLeg,
    act: 'insert leg',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'back, nothing saved; at the second time where something was typed',
    short: 'Esc back',
    on: ['boat item'],
    act: 'leave item',
  },
];
