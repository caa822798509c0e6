import type { BoatFileTrouble } from '../trouble.ts';
import { MOST_ENTRIES } from './fields.ts';
import type { Path } from './positions.ts';

/** A trouble before it has its place: that of the value at `path`, or of the name of its field. */
export interface Finding {
  readonly path: Path;
  readonly byName?: true;
  /** Made only for those shown: to find the nearest name takes time. */
  readonly facts: () => Facts;
}

export type Facts = BoatFileTrouble extends infer T
  ? T extends { place: unknown }
    ? Omit<T, 'place'>
    : never
  : never;

/** A group of fields as it was read, sound or not, and where it stands. */
export interface Entry {
  readonly fields: { readonly [field: string]: unknown };
  readonly path: Path;
}

/** The value as a group of fields; without any where it is none. */
export function entryAt(value: unknown, path: Path): Entry {
  const isGroup = typeof value === 'object' && value !== null && !Array.isArray(value);
  return { fields: isGroup ? (value as Entry['fields']) : {}, path };
}

/** The groups in the list `name` of an entry, as many as a list may have: a longer one is a trouble already. */
export function entriesIn(entry: Entry, name: string): readonly Entry[] {
  const list = entry.fields[name];
  if (!Array.isArray(list)) return [];
  return list.slice(0, MOST_ENTRIES).map((value, i) => entryAt(value, [...entry.path, name, i]));
}
