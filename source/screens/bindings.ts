import { boatKeys } from './boat/boat-keys.ts';
import { formKeys } from './forms/form-keys.ts';
import { isOffered } from './forms/form-moves.ts';
import type { FormName } from './forms/table.ts';
import { logBindings } from './log/log-keys.ts';
import { type Model, type PageName, pageOf } from './model.ts';
import type { Move } from './moves.ts';
import { preferencesKeys } from './preferences/preferences-keys.ts';
import { roundKeys } from './round/round-keys.ts';
import { traceKeys } from './trace/trace-keys.ts';
import { typedInto } from './typing.ts';

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
  /** Where it works there; absent means always. */
  readonly when?: (model: Model) => boolean;
  /** A move, or the form it opens. */
  readonly act: Move | { readonly fillIn: FormName };
}

const TURNED = ['item', 'answer', 'weather', 'trouble', 'trace', 'keys'] as const;
const PAGED: readonly PageName[] = [...TURNED, 'forecasts'];
/** Pages that are typed in: a single letter is no key there. */
const TYPED: readonly PageName[] = [
  'form',
  'stores',
  'heard',
  'first run',
  'round',
  'preferences',
  'boat item',
];

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
    on: PAGED,
    act: 'page down',
  },
  { keys: ['page up'], shown: 'PgUp', does: 'up a page', on: PAGED, act: 'page up' },
  {
    keys: ['g', 'home'],
    shown: 'g Home',
    does: 'to the top',
    on: PAGED,
    act: 'to the top',
  },
  {
    keys: ['G', 'end'],
    shown: 'G End',
    does: 'to the bottom',
    on: PAGED,
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
  ...formKeys.map(
    ({ key, shown = key, form, does, short, on }): Binding => ({
      keys: [key],
      shown,
      does,
      ...(short === undefined ? {} : { short: `${shown} ${short}` }),
      on,
      when: isOffered(form),
      act: { fillIn: form },
    }),
  ),
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
    keys: ['f'],
    shown: 'f',
    does: 'the forecasts aboard side by side: which counts, how far off they have been',
    short: 'f forecasts',
    on: ['weather'],
    act: 'forecasts',
  },
  {
    keys: ['t'],
    shown: 't',
    does: 'type a forecast as it is heard, a row for each day and night',
    short: 't type one',
    on: ['weather', 'forecasts'],
    act: 'hear',
  },
  {
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'the next forecast',
    short: '↑↓ choose',
    on: ['forecasts'],
    act: 'next forecast',
  },
  { keys: ['up', 'k'], shown: '↑ k', does: 'the one before', on: ['forecasts'], act: 'forecast before' },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'make it the one that counts, until a newer one is taken in; the log keeps it',
    short: 'Enter counts',
    on: ['forecasts'],
    act: 'count it',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'the next line; on an empty one the forecast is at its end, and Enter again takes it in',
    short: 'Enter on',
    on: ['heard'],
    act: 'end line',
  },
  {
    keys: ['tab', 'down'],
    shown: 'Tab ↓',
    does: 'to the next line',
    short: '↑↓ lines',
    on: ['heard'],
    act: 'next line',
  },
  {
    keys: ['back tab', 'up'],
    shown: 'Shift+Tab ↑',
    does: 'to the line before',
    on: ['heard'],
    act: 'line before',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'take what was typed, or what stands there, and go to the next question; at the end, make her folder',
    short: 'Enter next',
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
    does: 'back, nothing taken in',
    short: 'Esc back',
    on: ['heard'],
    act: 'back',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'leave, at the second time; nothing is written',
    short: 'Esc leave',
    on: ['first run'],
    act: 'leave unmade',
  },
  ...roundKeys,
  ...traceKeys,
  ...logBindings,
  ...preferencesKeys,
  { keys: ['escape', 'backspace'], shown: 'Esc', does: 'back', short: 'Esc back', on: PAGED, act: 'back' },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'close what was opened, choose nothing',
    on: ['board'],
    act: 'choose nothing',
  },
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
    on: ['board', 'item', 'answer', 'weather', 'trouble'],
    act: 'stores',
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
  ...boatKeys,
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

/** Those of them that do something where the model is. */
export function bindingsAt(model: Model): readonly Binding[] {
  return bindingsOn(pageOf(model).page).filter(
    ({ when, keys }) => (when?.(model) ?? true) && keys.some((key) => typedInto(model, key) === null),
  );
}

/** What the key does where the model is; null for a key that does nothing there. */
export function bindingOf(model: Model, key: string): Binding | null {
  return bindingsAt(model).find(({ keys }) => keys.includes(key)) ?? null;
}
