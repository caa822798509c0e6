import { nearest } from '../boat/nearest.ts';
import type { Trouble } from '../trouble.ts';

type UnknownWord = Extract<Trouble, { kind: 'unknown word' }>;

/** A word that is none of the words there are, with the nearest of them. */
export function unknownWord(what: UnknownWord['what'], word: string, words: readonly string[]): UnknownWord {
  const near = nearest(word, words);
  return { kind: 'unknown word', word, what, ...(near === undefined ? {} : { near }) };
}
