import { entryWords } from '../../words/entry-words.ts';
import { momentWords } from '../../words/say.ts';
import { entryOf, strikesOf } from '../log/rows.ts';
import type { Sight } from '../sight.ts';
import type { FormKind, FormRow } from './form.ts';

const WHY: FormRow = {
  field: 'why',
  label: 'why',
  example: 'read off the wrong stick',
  usual: 'not noted',
};

/** Withdraws an entry, as in a paper log: it stays there to be read. */
export const strike: FormKind = {
  title: 'STRIKE',
  offered: () => false,
  ofEntry: ({ struck, entry }) => !struck && entry.kind !== 'strike',
  rows: () => [WHY],
  entries: (typed, entry) => [{ kind: 'strike', entry, ...typed }],
  notes: (sight, about) => [
    `${told(sight, about)} It stays in the log, marked, and is left out of every sum; r restores it.`,
  ],
};

/** Strikes every strike of it that stands, so that the entry stands again. */
export const restore: FormKind = {
  title: 'RESTORE',
  offered: () => false,
  ofEntry: ({ struck, entry }, loaded) => struck && strikesOf(loaded, entry).length > 0,
  rows: () => [WHY],
  entries(typed, about, sight) {
    const listed = entryOf(sight.boat.loaded, about);
    const strikes = listed ? strikesOf(sight.boat.loaded, listed.entry) : [];
    return strikes.map(({ id }) => ({ kind: 'strike', entry: id, ...typed }));
  },
  notes: (sight, about) => [`${told(sight, about)} It counts again in every sum.`],
};

function told(sight: Sight, about: string): string {
  const listed = entryOf(sight.boat.loaded, about);
  if (!listed) return '';
  const when = momentWords(Date.parse(listed.entry.at), sight.model.zone, sight.at);
  return `${when}: ${entryWords(listed.entry, sight.boat.loaded.boat)}.`;
}
