import { clean } from '../words/clean.ts';
import { graphemesOf } from '../words/graphemes.ts';
import { type Span, say } from './lines.ts';
import { cut, widthOf } from './width.ts';

/** One line of typing. `caret` counts letters as a person does, 0 before the first. */
export interface Field {
  readonly text: string;
  readonly caret: number;
}

export const EMPTY: Field = { text: '', caret: 0 };

/** More than any value or remark needs; a pasted page is cut to it. */
const MOST_LETTERS = 2000;

/** The field with the text in it and the caret behind. */
export function fieldWith(text: string): Field {
  return { text, caret: lettersOf(text).length };
}

/** The field after a key as `keysOf` names it; null for a key that is none of a field's. */
export function typedIn({ text, caret }: Field, key: string): Field | null {
  const letters = lettersOf(text);
  const cutOut = (from: number, to: number): Field => ({
    text: [...letters.slice(0, from), ...letters.slice(to)].join(''),
    caret: from,
  });
  switch (key) {
    case 'backspace':
      return cutOut(Math.max(0, caret - 1), caret);
    case 'delete':
      return { ...cutOut(caret, caret + 1), caret };
    case 'left':
      return { text, caret: Math.max(0, caret - 1) };
    case 'right':
      return { text, caret: Math.min(letters.length, caret + 1) };
    case 'home':
    case 'ctrl a':
      return { text, caret: 0 };
    case 'end':
    case 'ctrl e':
      return { text, caret: letters.length };
    case 'ctrl u':
      return cutOut(0, caret);
    case 'ctrl k':
      return cutOut(caret, letters.length);
    case 'ctrl w':
      return cutOut(wordBefore(letters, caret), caret);
    case 'space':
      return pastedIn({ text, caret }, ' ');
  }
  return lettersOf(key).length === 1 ? pastedIn({ text, caret }, key) : null;
}

/** The field with a text put in at the caret, on one line, without what could move a cursor. */
export function pastedIn({ text, caret }: Field, put: string): Field {
  const letters = lettersOf(text);
  const room = MOST_LETTERS - letters.length;
  const plain = lettersOf(clean(put.replace(/[\r\n\t]+/gu, ' '), MOST_LETTERS)).slice(0, Math.max(0, room));
  const before = [...letters.slice(0, caret), ...plain].join('');
  return { text: before + letters.slice(caret).join(''), caret: lettersOf(before).length };
}

/** Stands where the next letter goes. */
export const CARET = '▏';

/** The field as it is drawn in at most `columns`, the part round the caret where it is longer. */
export function fieldSpans({ text, caret }: Field, columns: number): Span[] {
  const letters = lettersOf(text);
  let from = caret;
  let room = columns - 2;
  while (from > 0 && widthOf(letters[from - 1]!) <= room) {
    from -= 1;
    room -= widthOf(letters[from]!);
  }
  const before = letters.slice(from, caret).join('');
  const after = cut(letters.slice(caret).join(''), columns - 1 - widthOf(before));
  return [say(before, 'chosen'), say(CARET, 'chosen'), say(after, 'chosen')];
}

function wordBefore(letters: readonly string[], caret: number): number {
  let at = caret;
  while (at > 0 && letters[at - 1] === ' ') at -= 1;
  while (at > 0 && letters[at - 1] !== ' ') at -= 1;
  return at;
}

function lettersOf(text: string): string[] {
  return [...graphemesOf(text)];
}
