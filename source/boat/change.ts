import { parse } from 'jsonc-parser';
import type { Trouble } from '../trouble.ts';
import { withValue } from './edit-json.ts';
import { type PartKind, placeOf, valueAt } from './parts.ts';
import type { Path } from './positions.ts';
import { readBoat } from './read.ts';

/** A change to one part of boat.json. `retire` takes an entry of a list out; its entries stay in the log. */
export interface BoatChange {
  readonly kind: PartKind;
  /** Null for what is no entry of a list. */
  readonly id: string | null;
  readonly how: 'add' | 'change' | 'retire';
  /** Done one after the other. */
  readonly set: readonly Setting[];
  /** What stood there when the change was typed: where it no longer does, somebody else changed the file meanwhile. */
  readonly was?: readonly { readonly path: Path; readonly value: unknown }[];
}

/** A value by its path inside the part, undefined to take one out. `insert`: in front of what stands at that place of a list. */
export interface Setting {
  readonly path: Path;
  readonly value: unknown;
  readonly insert?: boolean;
}

/** The text of a boat.json after a change. All that is not changed stays as it was written, unknown fields included. The same text where the part is not there. */
export function changedText(text: string, { kind, id, how, set }: BoatChange): string {
  const boat: unknown = parse(text.replace(/^\ufeff/, ''));
  if (how === 'add') {
    const item = set.reduce<string>(edited, JSON.stringify({ id }));
    const list = valueAt(boat, [kind]);
    const end = Array.isArray(list) ? list.length : 0;
    return withValue(text, [kind, end], parse(item), { insert: true });
  }
  const place = placeOf(boat, kind, id);
  if (!place) return text;
  if (how === 'retire') return withValue(text, place, undefined);
  return set.reduce<string>(
    (json, { path, ...setting }) => edited(json, { ...setting, path: [...place, ...path] }),
    text,
  );
}

/** The same of the boat as it was read. Its lists and groups are not changed in place. */
export function changedValue(boat: unknown, { kind, id, how, set }: BoatChange): unknown {
  const place = placeOf(boat, kind, id);
  if (how === 'retire') return place ? withIn(boat, { path: place, value: undefined }) : boat;
  if (how === 'change' && !place) return boat;
  const item = set.reduce<unknown>(withIn, how === 'add' ? { id } : valueAt(boat, place!));
  if (how === 'change') return withIn(boat, { path: place!, value: item });
  const list = valueAt(boat, [kind]);
  return withIn(boat, { path: [kind, Array.isArray(list) ? list.length : 0], value: item, insert: true });
}

function withIn(root: unknown, { path, value, insert = false }: Setting): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list: readonly unknown[] = Array.isArray(root) ? root : [];
    const isLast = rest.length === 0;
    if (isLast && value === undefined) return list.toSpliced(step, 1);
    return list.toSpliced(step, isLast && insert ? 0 : 1, withIn(list[step], { path: rest, value }));
  }
  const { [step]: before, ...others } = (root ?? {}) as { readonly [field: string]: unknown };
  if (value === undefined && (rest.length === 0 || before === undefined))
    return rest.length === 0 ? others : root;
  return { ...(root as object), [step]: withIn(before, { path: rest, value, insert }) };
}

/** What the change was typed over and is no longer so in this text; null where all is as it was, or where the text is in trouble of its own. */
export function changedMeanwhile(text: string, { kind, id, how, was = [] }: BoatChange): Trouble | null {
  if (was.length === 0 || how !== 'change') return null;
  const read = readBoat(text, 'boat.json');
  if (!read.ok) return null;
  const place = placeOf(read.value, kind, id);
  if (!place) return { kind: 'changed meanwhile', id: id ?? kind, field: null };
  const other = was.find(
    ({ path, value }) => JSON.stringify(valueAt(read.value, [...place, ...path])) !== JSON.stringify(value),
  );
  return other ? { kind: 'changed meanwhile', id: id ?? kind, field: other.path.join('.') } : null;
}

function edited(json: string, { path, value, insert = false }: Setting): string {
  return withValue(json, path, value, { insert });
}
