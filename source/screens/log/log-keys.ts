import type { Binding } from '../bindings.ts';
import { pageOf } from '../model.ts';
import { itemToOpen } from './log-moves.ts';

const isFinding: NonNullable<Binding['when']> = (model) => {
  const page = pageOf(model);
  return page.page === 'log' && page.finding;
};
const isAboutItem: NonNullable<Binding['when']> = (model) => itemToOpen(model) !== null;
const isListed: NonNullable<Binding['when']> = (model) => !isFinding(model);
const on = ['log'] as const;

/** The keys of the log but those that open a form. */
export const logBindings: readonly Binding[] = [
  {
    keys: ['L'],
    shown: 'L',
    does: 'the log, newest first: search, only some, strike, restore; from an item, what names it',
    short: 'L log',
    on: ['board', 'item', 'engine', 'answer', 'weather', 'trouble'],
    act: 'log',
  },
  {
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'to the entry before it in time',
    short: '↑↓ choose',
    on,
    act: 'next entry',
  },
  { keys: ['up', 'k'], shown: '↑ k', does: 'to the entry after it in time', on, act: 'entry before' },
  { keys: ['page down', 'space'], shown: 'PgDn Space', does: 'a page on', on, act: 'entries on' },
  { keys: ['page up'], shown: 'PgUp', does: 'a page back', on, act: 'entries back' },
  { keys: ['g', 'home'], shown: 'g Home', does: 'to the newest', on, when: isListed, act: 'newest entry' },
  { keys: ['G', 'end'], shown: 'G End', does: 'to the oldest', on, when: isListed, act: 'oldest entry' },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'all of the entry, as it was recorded',
    short: 'Enter open',
    foremost: true,
    on,
    when: isListed,
    act: 'open entry',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'turn to the item it is about',
    short: 'Enter item',
    foremost: true,
    on: ['entry'],
    when: isAboutItem,
    act: 'open item of entry',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'have done typing what to search for',
    short: 'Enter done',
    foremost: true,
    on,
    when: isFinding,
    act: 'search done',
  },
  {
    keys: ['/'],
    shown: '/',
    does: 'search: words, kinds, names, days (2026-02), who',
    short: '/ search',
    on,
    when: isListed,
    act: 'search',
  },
  {
    keys: ['f'],
    shown: 'f',
    does: 'only entries of this kind, or all kinds',
    short: 'f kind',
    on,
    when: isListed,
    act: 'only kind',
  },
  {
    keys: ['i'],
    shown: 'i',
    does: 'only what names this item, or all',
    on,
    when: isListed,
    act: 'only item',
  },
  {
    keys: ['d'],
    shown: 'd',
    does: 'only what is wrong: damaged lines with file and line, entries left out of the sums; or all',
    on,
    when: isListed,
    act: 'only wrong',
  },
  {
    keys: ['escape', 'backspace'],
    shown: 'Esc',
    does: 'search for nothing any more, or all kinds again, or back',
    short: 'Esc back',
    on,
    act: 'leave log',
  },
];
