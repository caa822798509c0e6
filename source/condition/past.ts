import { type Entry, type EntryKind, type EntryOf, itemField } from '../logbook/entries.ts';

/** An entry with its instant, ms since 1970 UTC, and its place in the order in which things happened. */
export interface Timed<K extends EntryKind = EntryKind> {
  readonly at: number;
  readonly order: number;
  readonly entry: EntryOf<K>;
}

/** What the log tells up to a moment, grouped once. Every list is oldest first. */
export interface Past {
  readonly last: Timed | null;
  /** Those of a kind; with an id, those of the kind that name it as their item. */
  of<K extends EntryKind>(kind: K, id?: string): readonly Timed<K>[];
  /** Those of any kind that name this id as their item. */
  about(id: string): readonly Timed[];
  /** Top-ups, changes, renewals and services that took from each spare. */
  readonly takenFrom: ReadonlyMap<string, readonly Timed[]>;
  /** Every item named, with the entries naming it kind by kind. */
  readonly items: ReadonlyMap<string, ReadonlyMap<EntryKind, readonly Timed[]>>;
}

/** Orders entries by when they happened, ties by Lamport count, writer and number, and leaves out those after the moment. */
export function pastOf(entries: readonly Entry[], moment: number): Past {
  const all = inOrder(entries, moment);
  const items = new Map<string, Map<EntryKind, Timed[]>>();
  const without = new Map<EntryKind, Timed[]>();
  const takenFrom = new Map<string, Timed[]>();
  for (const timed of all) {
    const { entry } = timed;
    const item = itemOf(entry);
    put(item === undefined ? without : groupsOf(items, item), entry.kind, timed);
    for (const spare of sparesTakenBy(entry)) put(takenFrom, spare, timed);
  }
  const ofAnyItem = (kind: EntryKind) =>
    merged([...[...items.values()].map((kinds) => kinds.get(kind) ?? []), without.get(kind) ?? []]);
  return {
    last: all.at(-1) ?? null,
    // The compiler cannot follow a kind into its group.
    of: <K extends EntryKind>(kind: K, id?: string) =>
      (id === undefined
        ? ofAnyItem(kind)
        : (items.get(id)?.get(kind) ?? [])) as readonly unknown[] as Timed<K>[],
    about: (id) => merged([...(items.get(id)?.values() ?? [])]),
    takenFrom,
    items,
  };
}

/** Several lists as one, oldest first. */
export function merged<T extends { readonly order: number }>(lists: readonly (readonly T[])[]): readonly T[] {
  return lists.flat().sort((a, b) => a.order - b.order);
}

/** The id in the field that names the entry's item. */
export function itemOf(entry: Entry): string | undefined {
  const field = itemField[entry.kind];
  return field === undefined ? undefined : (entry[field] as string | undefined);
}

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

const none: readonly string[] = [];

/** The spares whose stock falls by an entry; each once. */
function sparesTakenBy(entry: Entry): readonly string[] {
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

function groupsOf(items: Map<string, Map<EntryKind, Timed[]>>, id: string): Map<EntryKind, Timed[]> {
  const found = items.get(id);
  if (found) return found;
  const made = new Map<EntryKind, Timed[]>();
  items.set(id, made);
  return made;
}

function put<K>(groups: Map<K, Timed[]>, key: K, timed: Timed): void {
  const group = groups.get(key);
  if (group) group.push(timed);
  else groups.set(key, [timed]);
}
