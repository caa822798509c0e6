import type { EntryKind, EntryOf, Fields } from '../../source/logbook/entries.ts';

let written = 0;

/**
 * An entry as the log holds it: `anEntry('dip', { fluid: 'fuel', share: 0.5 }, '2026-02-03T08:00:00Z')`. Instants are UTC, or ms since
 * 1970. Ids are counted up in the order made, all by one writer; typed (`rec`) when it happened. `fields` may say otherwise:
 * `{ ..., rec: '...', writer: 'other456', n: 1, lc: 7, id: 'other456-1' }`.
 */
export function anEntry<K extends EntryKind>(kind: K, fields: Fields<K>, at: string | number): EntryOf<K> {
  written += 1;
  const happened = new Date(at).toISOString();
  const placed = { id: `writer12-${written}`, writer: 'writer12', n: written, lc: written, rec: happened };
  // The compiler cannot see that the fields of K and the kind K make the entry of K.
  return { ...placed, at: happened, kind, ...fields } as unknown as EntryOf<K>;
}
