import type { Spare } from '../../boat/spare.ts';
import { cleaned } from '../../words/cleaned.ts';
import { amountWords } from '../../words/say.ts';
import type { Sight } from '../sight.ts';

/** The spare a fluid is topped up from; null where the boat file names none. */
export function stockOf(sight: Sight, fluid: string): Spare | null {
  const { fluids, spares } = sight.boat.loaded.boat;
  const stock = fluids.find(({ id }) => id === fluid)?.stock;
  const spare = spares.find(({ id }) => id === stock);
  return spare ? { ...spare, name: cleaned(spare.name) } : null;
}

/** How much of a spare is there. */
export function aboardWords(sight: Sight, { id, unit }: Pick<Spare, 'id' | 'unit'>): string {
  const count = sight.boat.loaded.condition.spares.get(id)?.count ?? null;
  return count === null ? 'not counted yet' : `${amountWords(count, unit)} aboard`;
}
