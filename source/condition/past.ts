import { type Entry, type EntryKind, type EntryOf, itemField } from '../logbook/entries.ts';

/** An entry with its instant, ms since 1970 UTC, and its place in the order in which things happened. */
export interface Timed<K extends EntryKind = EntryKind> {
  readonly at: number;
  readonly order: number;
  readonly entry: EntryOf<K>;
}

/** What the log tells up to a moment, oldest first, grouped once. */
export interface Past {
  readonly all: readonly Timed[];
  /** Those of a kind; with an id, those that name it. */
  of<K extends EntryKind>(kind: K, id?: string): readonly Timed<K>[];
  /** Every entry that names this id as its item, or as a spare it took from. */
  about(id: string): readonly Timed[];
}

/** Orders entries by when they happened, ties by Lamport count, writer and number, and leaves out those after the moment. */
export function pastOf(entries: readonly Entry[], moment: number): Past {
  const all = inOrder(entries, moment);
  const byKind = new Map<string, Timed[]>();
  const byId = new Map<string, Timed[]>();
  for (const timed of all) {
    put(byKind, timed.entry.kind, timed);
    const item = itemOf(timed.entry);
    if (item !== undefined) put(byId, item, timed);
    for (const spare of sparesTakenBy(timed.entry)) if (spare !== item) put(byId, spare, timed);
  }
  const about = (id: string) => byId.get(id) ?? [];
  // The compiler cannot follow a kind into its group.
  const of = <K extends EntryKind>(kind: K, id?: string) =>
    (id === undefined
      ? (byKind.get(kind) ?? [])
      : about(id).filter(({ entry }) => entry.kind === kind)) as unknown as readonly Timed<K>[];
  return { all, of, about };
}

/** The id in the field that names the entry's item. */
export function itemOf(entry: Entry): string | undefined {
  const field = itemField[entry.kind];
  return field === undefined ? undefined : (entry[field] as string | undefined);
}

/** The spares whose stock falls by a top-up, a change, a renewal or a service; each once. */
export function sparesTakenBy(entry: Entry): readonly string[] {
  switch (entry.kind) {
    case 'topup':
    case 'change':
    case 'renew':
      return entry.from === undefined ? none : [entry.from];
    case 'service':
      return entry.uses === undefined ? none : [...new Set(entry.uses.map(({ spare }) => spare))];
    default:
      return none;
  }
}

const none: readonly string[] = [];

function inOrder(entries: readonly Entry[], moment: number): readonly Timed[] {
  const seen: { at: number; order: number; entry: Entry }[] = [];
  for (const entry of entries) {
    const at = Date.parse(entry.at);
    if (at <= moment) seen.push({ at, order: 0, entry });
  }
  seen.sort((a, b) => a.at - b.at || byPlaceInLog(a.entry, b.entry));
  seen.forEach((timed, index) => {
    timed.order = index;
  });
  return seen as readonly Timed[];
}

function byPlaceInLog(a: Entry, b: Entry): number {
  return a.lc - b.lc || compare(a.writer, b.writer) || a.n - b.n || compare(a.id, b.id);
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function put(groups: Map<string, Timed[]>, key: string, timed: Timed): void {
  const group = groups.get(key);
  if (group) group.push(timed);
  else groups.set(key, [timed]);
}
