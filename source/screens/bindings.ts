import { boardKeys } from './board-keys.ts';
import { boatKeys } from './boat/boat-keys.ts';
import { firstRunKeys } from './first-run/first-run-keys.ts';
import { forecastKeys } from './forecast-keys.ts';
import { formKeys } from './forms/form-keys.ts';
import { isOffered, isSaved } from './forms/form-moves.ts';
import type { FormName } from './forms/table.ts';
import { logBindings } from './log/log-keys.ts';
import { type Model, type PageName, pageOf } from './model.ts';
import type { Move } from './moves.ts';
import { preferencesKeys } from './preferences/preferences-keys.ts';
import { roundKeys } from './round/round-keys.ts';
import { storesKeys } from './stores/stores-keys.ts';
import { isTracing } from './trace/trace.ts';
import { traceKeys } from './trace/trace-keys.ts';
import { typedInto } from './typing.ts';
import { weatherKeys } from './weather-keys.ts';

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
  /** The page is there for this key: where there is little room the bottom line keeps it. */
  readonly foremost?: true;
  /** The pages it works on; absent means everywhere. */
  readonly on?: readonly PageName[];
  /** Where it works there; absent means always. */
  readonly when?: (model: Model) => boolean;
  /** What it does hangs on the trace of its page: until that is told it waits. */
  readonly waits?: true;
  /** A move, or the form it opens. */
  readonly act: Move | { readonly fillIn: FormName };
}

const TURNED = ['item', 'engine', 'answer', 'weather', 'trouble', 'trace', 'found', 'entry', 'keys'] as const;
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
  ...boardKeys,
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
  ...weatherKeys,
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
    foremost: true,
    on: ['form'],
    when: isSaved,
    act: 'save form',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'of an inflow: work it out; nothing of it is logged',
    short: 'Enter work out',
    foremost: true,
    on: ['form'],
    when: (model) => !isSaved(model),
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
  ...boatKeys,
  ...forecastKeys,
  ...firstRunKeys,
  ...traceKeys,
  ...logBindings,
  ...preferencesKeys,
  { keys: ['escape', 'backspace'], shown: 'Esc', does: 'back', short: 'Esc back', on: PAGED, act: 'back' },
  ...storesKeys,
  {
    keys: ['w'],
    shown: 'w',
    does: 'the weather against the limits, hour by hour',
    short: 'w weather',
    on: ['board', 'item', 'engine', 'answer', 'trouble'],
    act: 'weather',
  },
  { keys: ['!'], shown: '!', does: 'what is wrong with a file or a line of the log', act: 'trouble' },
  ...roundKeys,
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

/** What moves over the lines of a page. */
const OVER_LINES: readonly Binding['act'][] = [
  'line down',
  'line up',
  'page down',
  'page up',
  'to the top',
  'to the bottom',
];

/**
 * Whether the key has to wait for the trace of the page on top, so that it means the same however quickly that is told. On the trace's own page those do
 * too that move over its lines: these are not there yet.
 */
export function waitsForTrace(model: Model, key: string): boolean {
  const { page } = pageOf(model);
  const waits = ({ waits: hangs, act }: Binding) =>
    hangs === true || (page === 'trace' && OVER_LINES.includes(act));
  return isTracing(model) && bindingsOn(page).some((one) => one.keys.includes(key) && waits(one));
}
