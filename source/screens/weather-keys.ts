import type { Binding } from './bindings.ts';

/** The keys of the weather page: when to leave, and what is tried. */
export const weatherKeys: readonly Binding[] = [
  {
    keys: ['right', 'l'],
    shown: '→ l',
    does: 'leave an hour later',
    short: '←→ hour',
    on: ['weather'],
    act: 'hour later',
  },
  { keys: ['left', 'h'], shown: '← h', does: 'leave an hour earlier', on: ['weather'], act: 'hour before' },
  { keys: ['>', '.'], shown: '>', does: 'leave six hours later', on: ['weather'], act: 'hours later' },
  { keys: ['<', ','], shown: '<', does: 'leave six hours earlier', on: ['weather'], act: 'hours before' },
  {
    keys: ['tab'],
    shown: 'Tab',
    does: 'the next thing that can be tried: a limit, the speed, the passage',
    on: ['weather'],
    act: 'try another',
  },
  {
    keys: ['back tab'],
    shown: 'Shift+Tab',
    does: 'the one before',
    on: ['weather'],
    act: 'try the one before',
  },
  {
    keys: ['+', '='],
    shown: '+',
    does: 'try it higher; the boat file stays as it is',
    short: '+ - try',
    on: ['weather'],
    act: 'try more',
  },
  { keys: ['-', '_'], shown: '-', does: 'try it lower', on: ['weather'], act: 'try less' },
  { keys: ['0'], shown: '0', does: 'back to what the boat file says', on: ['weather'], act: 'try nothing' },
];
