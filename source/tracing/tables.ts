import { assert } from '../trouble.ts';
import { type Table, tableSchema } from './table.ts';
import anodeWear from './tables/anode-wear.json' with { type: 'json' };
import bilge from './tables/bilge.json' with { type: 'json' };
import charging from './tables/charging.json' with { type: 'json' };
import coolant from './tables/coolant.json' with { type: 'json' };
import engineOil from './tables/engine-oil.json' with { type: 'json' };
import fuel from './tables/fuel.json' with { type: 'json' };
import gearOil from './tables/gear-oil.json' with { type: 'json' };
import overheating from './tables/overheating.json' with { type: 'json' };
import willNotStart from './tables/will-not-start.json' with { type: 'json' };

const OURS = [gearOil, engineOil, coolant, fuel, bilge, overheating, willNotStart, charging, anodeWear];
let read: readonly Table[] | null = null;

/** Our own tables; read at the first asking. */
export function ownTables(): readonly Table[] {
  read ??= OURS.map((table) => {
    const parsed = tableSchema.safeParse(table);
    assert(parsed.success, `the table ${table.id} is not as its schema says`);
    return parsed.data;
  });
  return read;
}

/** All tables: the owner's take the place of ours of the same id, and come first. */
export function tablesWith(owners: readonly Table[]): readonly Table[] {
  const theirs = new Set(owners.map(({ id }) => id));
  return [...owners, ...ownTables().filter(({ id }) => !theirs.has(id))];
}

/** A thing aboard a table may be for. */
export interface Traced {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly fuel?: boolean | undefined;
}

/** The tables for a thing: those that name it, else those that know it by a word, else those for all of its kind. */
export function tablesFor(thing: Traced, tables: readonly Table[]): readonly Table[] {
  const ofKind = tables.filter((table) => table.for.kind === thing.kind);
  const named = ofKind.filter((table) => table.for.items.includes(thing.id));
  if (named.length > 0) return named;
  const text = `${thing.id} ${thing.name}`.toLowerCase();
  return ofKind.filter((table) => {
    const { items, words, without, fuel } = table.for;
    if (fuel !== undefined) return fuel === (thing.fuel ?? false);
    if (without.some((word) => text.includes(word.toLowerCase()))) return false;
    return words.length > 0 ? words.some((word) => text.includes(word.toLowerCase())) : items.length === 0;
  });
}
