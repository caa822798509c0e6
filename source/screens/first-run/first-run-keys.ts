import type { Binding } from '../bindings.ts';

/** The keys of the interview. */
export const firstRunKeys: readonly Binding[] = [
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'take what was typed, or what stands there, and go to the next question; at the end, make her folder',
    short: 'Enter next',
    foremost: true,
    on: ['first run'],
    act: 'take answer',
  },
  {
    keys: ['down', 'tab'],
    shown: '↓ Tab',
    does: 'to the next question',
    short: '↑↓ questions',
    on: ['first run'],
    act: 'next question',
  },
  {
    keys: ['up', 'back tab'],
    shown: '↑ Shift+Tab',
    does: 'to the question before',
    on: ['first run'],
    act: 'question before',
  },
  {
    keys: ['page down'],
    shown: 'PgDn',
    does: 'to the end, all that was not answered as it stands',
    short: 'PgDn end',
    on: ['first run'],
    act: 'last question',
  },
  {
    keys: ['page up'],
    shown: 'PgUp',
    does: 'to the first question',
    on: ['first run'],
    act: 'first question',
  },
  {
    keys: ['ctrl o'],
    shown: 'Ctrl+O',
    does: 'look round the sample boat instead; nothing is written',
    short: 'Ctrl+O sample',
    on: ['first run'],
    act: 'open sample',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'leave, at the second time; nothing is written',
    short: 'Esc leave',
    on: ['first run'],
    act: 'leave unmade',
  },
];
