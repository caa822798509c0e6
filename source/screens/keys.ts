import type { Key } from 'ink';
import { graphemesOf } from '../words/graphemes.ts';

const NAMED = [
  ['upArrow', 'up'],
  ['downArrow', 'down'],
  ['leftArrow', 'left'],
  ['rightArrow', 'right'],
  ['pageUp', 'page up'],
  ['pageDown', 'page down'],
  ['home', 'home'],
  ['end', 'end'],
  ['return', 'enter'],
  ['escape', 'escape'],
  ['backspace', 'backspace'],
  ['delete', 'delete'],
] as const satisfies readonly (readonly [keyof Key, string])[];

const CONTROL: Readonly<Record<string, string>> = {
  '\r': 'enter',
  '\n': 'enter',
  '\t': 'tab',
  '\b': 'backspace',
  '\u007f': 'backspace',
  '\u001b': 'escape',
};

/**
 * The keys in one chunk of input, in order: a letter as itself, others by name (`enter`, `up`, `ctrl c`).
 * A terminal sends what was typed quickly as one chunk, so this is the one place where chunks are split.
 */
export function keysOf(input: string, key: Partial<Key>): string[] {
  if (key.eventType === 'release') return [];
  // Escape and the next key in one chunk look like that key with Alt held; no key here wants Alt.
  if (key.meta) return ['escape', ...keysOf(input, { ...key, meta: false })];
  if (key.tab) return [key.shift ? 'back tab' : 'tab'];
  const named = NAMED.find(([flag]) => key[flag]);
  if (named) return [named[1]];
  if (key.ctrl) return input.length === 1 ? [`ctrl ${input}`] : [];
  const keys: string[] = [];
  for (const segment of graphemesOf(input)) {
    if (segment === '\r\n') keys.push('enter');
    else if (segment < ' ' || segment === '\u007f') keys.push(...controlKey(segment));
    else keys.push(segment === ' ' ? 'space' : segment);
  }
  return keys;
}

function controlKey(letter: string): string[] {
  const name = CONTROL[letter];
  if (name) return [name];
  const code = letter.codePointAt(0)!;
  return code >= 1 && code <= 26 ? [`ctrl ${String.fromCodePoint(code + 96)}`] : [];
}
