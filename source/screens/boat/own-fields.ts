import type { Holds } from '../../boat/part-fields.ts';

/** The fields of each kind of list that is typed in one line, those its entries are told apart by first. */
const LISTS: { readonly [is in Holds['is']]?: { readonly known: readonly string[]; readonly keys: number } } =
  {
    parts: { known: ['spare', 'count'], keys: 1 },
    sectors: { known: ['from', 'to', 'wind', 'seas'], keys: 2 },
    'leg sectors': { known: ['from', 'to', 'wind', 'seas'], keys: 2 },
  };

/** A value as it was typed; in a list, fields of the owner's own stay with their entries. */
export function withOwn(value: unknown, stood: unknown, { is }: Pick<Holds, 'is'>): unknown {
  const list = LISTS[is];
  if (!list || !Array.isArray(value) || !Array.isArray(stood)) return value;
  const { known, keys } = list;
  return value.map((one: Readonly<Record<string, unknown>>) => {
    const before = stood.find((old) => known.slice(0, keys).every((key) => old[key] === one[key]));
    return { ...one, ...ownFields(before, known) };
  });
}

/** What the owner added to an entry. */
export function ownFields(entry: unknown, known: readonly string[]): object {
  return Object.fromEntries(Object.entries(entry ?? {}).filter(([name]) => !known.includes(name)));
}
