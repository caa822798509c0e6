import { applyEdits, type JSONPath, modify, parse } from 'jsonc-parser';
import type { Kind } from './item-fields.ts';

/** A change to one item of boat.json: values by path, undefined to take one out. `retire` takes the item out; its entries stay in the log. */
export interface BoatChange {
  readonly kind: Kind;
  readonly id: string;
  readonly how: 'add' | 'change' | 'retire';
  readonly set: readonly { readonly path: readonly string[]; readonly value: unknown }[];
}

const FORMAT = { formattingOptions: { insertSpaces: true, tabSize: 2 } };

/** The text of a boat.json after a change. All that is not changed stays as it was written, unknown fields included. The same text where the item is not there. */
export function changedText(text: string, { kind, id, how, set }: BoatChange): string {
  const items = (parse(text) as Partial<Record<Kind, readonly { id?: unknown }[]>> | undefined)?.[kind] ?? [];
  const at = items.findIndex((item) => item.id === id);
  if (how === 'add') {
    const item = set.reduce<string>(
      (json, { path, value }) => edited(json, [...path], value),
      JSON.stringify({ id }),
    );
    return edited(text, [kind, items.length], parse(item));
  }
  if (at < 0) return text;
  if (how === 'retire') return edited(text, [kind, at], undefined);
  return set.reduce<string>((changed, { path, value }) => edited(changed, [kind, at, ...path], value), text);
}

function edited(text: string, path: JSONPath, value: unknown): string {
  const isArrayInsertion = typeof path.at(-1) === 'number' && value !== undefined;
  return applyEdits(text, modify(text, path, value, { ...FORMAT, isArrayInsertion }));
}
