import type { Spare } from '../../boat/spare.ts';
import { cleaned } from '../../words/cleaned.ts';
import { amountWords } from '../../words/say.ts';
import type { Sight } from '../sight.ts';
import { type FormRow, NONE, type Typed } from './form.ts';

/** The spare a fluid is topped up from or an anode renewed from; null where the boat file names none. */
export function stockOf(sight: Sight, item: string): Spare | null {
  const { fluids, anodes, spares } = sight.boat.loaded.boat;
  const named = fluids.find(({ id }) => id === item)?.stock ?? anodes.find(({ id }) => id === item)?.spare;
  const spare = spares.find(({ id }) => id === named);
  return spare ? { ...spare, name: cleaned(spare.name) } : null;
}

/** Where it came from: of itself the spare that belongs to it. */
export function fromRow(sight: Sight, stock: Spare | null): FormRow {
  return {
    field: 'from',
    label: 'from the stores',
    example: 'the beginning of a name, or none',
    usual: stock ? stock.name : NONE.name,
    choices: [NONE, ...sight.boat.loaded.boat.spares],
  };
}

/** What was typed, with the spare it comes from: that which belongs to it where none was named. */
export function withStock({ from, ...typed }: Typed, stock: Spare | null): Typed {
  const spare = from ?? stock?.id ?? NONE.id;
  return spare === NONE.id ? typed : { ...typed, from: spare };
}

export function stockNotes(sight: Sight, stock: Spare | null): string[] {
  return stock ? [`Taken from ${stock.name}: ${aboardWords(sight, stock)}.`] : [];
}

/** How much of a spare is there. */
export function aboardWords(sight: Sight, { id, unit }: Pick<Spare, 'id' | 'unit'>): string {
  const count = sight.boat.loaded.condition.spares.get(id)?.count ?? null;
  return count === null ? 'not counted yet' : `${amountWords(count, unit)} aboard`;
}
