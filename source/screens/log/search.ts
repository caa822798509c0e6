import type { Entry } from '../../logbook/entries.ts';
import { entryWords } from '../../words/entry-words.ts';
import type { Loaded } from '../model.ts';

/** Worded at a time: some 8 ms of work. So many can be searched at once, before any was worded. */
export const PART = 1500;

/** An entry and what is searched in it; null until it is worded. A decade of them takes longer to word than a key may take. */
export interface Searched {
  readonly entry: Entry;
  text: string | null;
}

/** The words looked for: each must be there, in any order. */
export function wordsIn(text: string): readonly string[] {
  return text
    .toLocaleLowerCase()
    .split(/\s+/u)
    .filter((word) => word !== '');
}

/** Whether an entry has all the words: in its sentence, its kind, who typed it, its id or its day. */
export function isFound(searched: Searched, { boat }: Loaded, words: readonly string[]): boolean {
  const text = searched.text ?? word(searched, boat);
  return words.every((one) => text.includes(one));
}

/** How many of the newest are searched where so many were worded ahead. */
export function searchable(worded: number): number {
  return Math.max(PART, worded);
}

/** Words an entry, ahead of the key that searches it. */
export function word(searched: Searched, boat: Loaded['boat']): string {
  const { entry } = searched;
  const parts = [entryWords(entry, boat), entry.kind, entry.by ?? '', entry.id, entry.at.slice(0, 10)];
  searched.text = parts.join(' ').toLocaleLowerCase();
  return searched.text;
}
