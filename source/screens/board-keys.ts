import type { Binding } from './bindings.ts';

/** The keys of the board: what is chosen on it, and turning to that. */
export const boardKeys: readonly Binding[] = [
  {
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'to the next line',
    short: '↑↓ choose',
    on: ['board'],
    act: 'choose next',
  },
  { keys: ['up', 'k'], shown: '↑ k', does: 'to the line before', on: ['board'], act: 'choose before' },
  {
    keys: ['tab', 'right', 'l'],
    shown: 'Tab → l',
    does: 'to the next part of the page',
    on: ['board'],
    act: 'choose next part',
  },
  {
    keys: ['back tab', 'left', 'h'],
    shown: 'Shift+Tab ← h',
    does: 'to the part before',
    on: ['board'],
    act: 'choose part before',
  },
  {
    keys: ['g', 'home'],
    shown: 'g Home',
    does: 'back to the top of the board, nothing chosen',
    on: ['board'],
    act: 'choose nothing',
  },
  { keys: ['G', 'end'], shown: 'G End', does: 'to the last line', on: ['board'], act: 'choose last' },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'turn to what is chosen, or open its fold; with nothing chosen, to why the answer is what it is',
    short: 'Enter open',
    foremost: true,
    on: ['board'],
    act: 'open',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'close what was opened, choose nothing',
    on: ['board'],
    act: 'choose nothing',
  },
];
