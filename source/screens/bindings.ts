import { type Model, type PageName, pageOf } from './model.ts';
import type { Move } from './moves.ts';

/** One line of the key table: the whole of what a key is. The bottom line and the keys page are made from it. */
export interface Binding {
  /** Keys as `keysOf` names them. */
  readonly keys: readonly string[];
  /** How the keys are written for a person. */
  readonly shown: string;
  /** What it does, for the keys page. */
  readonly does: string;
  /** One or two words for the bottom line; absent keeps it off there. */
  readonly short?: string;
  /** The pages it works on; absent means everywhere. */
  readonly on?: readonly PageName[];
  readonly act: Move;
}

const TURNED = ['item', 'answer', 'weather', 'trouble', 'keys'] as const;
/** Pages that are typed in: a single letter is no key there. */
const TYPED: readonly PageName[] = ['form', 'round'];

const LEAVE = 'leave; everything entered is saved already';

const bindings: readonly Binding[] = [
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
    on: ['board'],
    act: 'open',
  },
  { keys: ['down', 'j'], shown: '↓ j', does: 'down a line', short: '↑↓ move', on: TURNED, act: 'line down' },
  { keys: ['up', 'k'], shown: '↑ k', does: 'up a line', on: TURNED, act: 'line up' },
  {
    keys: ['page down', 'space'],
    shown: 'PgDn Space',
    does: 'down a page',
    on: TURNED,
    act: 'page down',
  },
  { keys: ['page up'], shown: 'PgUp', does: 'up a page', on: TURNED, act: 'page up' },
  {
    keys: ['g', 'home'],
    shown: 'g Home',
    does: 'to the top',
    on: TURNED,
    act: 'to the top',
  },
  {
    keys: ['G', 'end'],
    shown: 'G End',
    does: 'to the bottom',
    on: TURNED,
    act: 'to the bottom',
  },
  {
    keys: ['right', 'l', 'tab'],
    shown: '→ l Tab',
    does: 'the next item',
    short: '→ next',
    on: ['item'],
    act: 'next item',
  },
  {
    keys: ['left', 'h', 'back tab'],
    shown: '← h',
    does: 'the item before',
    on: ['item'],
    act: 'item before',
  },
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
  {
    keys: ['t'],
    shown: 't',
    does: 'top up: log what was poured in',
    short: 't top up',
    on: ['item'],
    act: 'top up',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'save it; what must be filled in is asked for, what is in doubt is asked about once',
    short: 'Enter save',
    on: ['form'],
    act: 'save form',
  },
  {
    keys: ['tab', 'down'],
    shown: 'Tab ↓',
    does: 'to the next line',
    short: '↑↓ lines',
    on: ['form'],
    act: 'next row',
  },
  {
    keys: ['back tab', 'up'],
    shown: 'Shift+Tab ↑',
    does: 'to the line before',
    on: ['form'],
    act: 'row before',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'back, nothing saved',
    short: 'Esc back',
    on: ['form'],
    act: 'back',
  },
  {
    keys: ['r'],
    shown: 'r',
    does: 'the round: everything due a look, row by row',
    short: 'r round',
    on: ['board', 'item'],
    act: 'round',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'save the row and go on; in an empty one: seen and unchanged. What is in doubt is asked about once',
    short: 'Enter save',
    on: ['round'],
    act: 'save look',
  },
  {
    keys: ['tab', 'down'],
    shown: 'Tab ↓',
    does: 'to the next row; what is passed is not looked at',
    short: '↑↓ pass',
    on: ['round'],
    act: 'next look',
  },
  {
    keys: ['back tab', 'up'],
    shown: 'Shift+Tab ↑',
    does: 'to the row before; above the first is when the round was made',
    on: ['round'],
    act: 'look before',
  },
  {
    keys: ['a'],
    shown: 'a',
    does: 'in an empty row: all the rest seen and unchanged',
    short: 'a rest',
    on: ['round'],
    act: 'rest unchanged',
  },
  {
    keys: ['u'],
    shown: 'u',
    does: 'in an empty row: strike what this round saved last',
    short: 'u strike',
    on: ['round'],
    act: 'strike last',
  },
  { keys: ['page down'], shown: 'PgDn', does: 'show more below', on: ['round'], act: 'look further down' },
  { keys: ['page up'], shown: 'PgUp', does: 'show more above', on: ['round'], act: 'look further up' },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'back; every row saved stays saved',
    short: 'Esc back',
    on: ['round'],
    act: 'leave round',
  },
  { keys: ['escape', 'backspace'], shown: 'Esc', does: 'back', short: 'Esc back', on: TURNED, act: 'back' },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'close what was opened, choose nothing',
    on: ['board'],
    act: 'choose nothing',
  },
  {
    keys: ['w'],
    shown: 'w',
    does: 'the weather against the limits, hour by hour',
    short: 'w weather',
    on: ['board', 'item', 'answer', 'trouble'],
    act: 'weather',
  },
  { keys: ['!'], shown: '!', does: 'what is wrong with a file or a line of the log', act: 'trouble' },
  { keys: ['p'], shown: 'p', does: 'day, night (reds only) or plain', act: 'palette' },
  {
    keys: ['ctrl l'],
    shown: 'Ctrl+L',
    does: 'read the folder again and draw the page afresh',
    act: 'afresh',
  },
  {
    keys: ['ctrl z'],
    shown: 'Ctrl+Z',
    does: 'put the board aside; fg in the shell brings it back',
    act: 'suspend',
  },
  { keys: ['?'], shown: '?', does: 'the keys of this page', short: '? keys', act: 'keys' },
  { keys: ['q'], shown: 'q', does: LEAVE, short: 'q leave', act: 'quit' },
  { keys: ['ctrl c'], shown: 'Ctrl+C', does: LEAVE, act: 'quit' },
];

/** The key table as it holds on a page, in order. */
export function bindingsOn(page: PageName): readonly Binding[] {
  const typed = TYPED.includes(page);
  return bindings.filter(({ on, keys }) => on?.includes(page) ?? !(typed && keys.every(isLetter)));
}

function isLetter(key: string): boolean {
  return key.length === 1 && key !== '?';
}

/** What the key does where the model is; null for a key that does nothing there. */
export function bindingOf(model: Model, key: string): Binding | null {
  return bindingsOn(pageOf(model).page).find(({ keys }) => keys.includes(key)) ?? null;
}
