import { cleaned } from '../../words/cleaned.ts';
import { instant } from '../../words/figures.ts';
import { type StoreDocument, type StoresDocument, storesOf } from '../../words/stores-document.ts';
import { beginsIn } from '../begins.ts';
import type { Field } from '../field.ts';
import { shownItems } from '../shown-item.ts';
import type { Sight } from '../sight.ts';

/** The stores, searched as one types. */
export interface StoresPage {
  readonly page: 'stores';
  readonly from: number;
  readonly find: Field;
  /** The id of the store in hand; null: the first that is shown. */
  readonly chosen: string | null;
  /** The shopping list instead. */
  readonly shopping: boolean;
}

/** Stores under one heading. */
export interface Shelf {
  readonly title: string;
  readonly stores: readonly Shown[];
}

/** A store as counted, or one nobody counted yet. */
export type Shown = StoreDocument | { id: string; name: string; locker: string | null; count: null };

/** The stores as the answer has them; until the first reckoning is done, as they were counted, those under what is wanted marked. */
export function storesDocument({ boat, document, at }: Sight): StoresDocument {
  if (document) return cleaned(storesOf(boat.loaded.boat, document));
  const items = shownItems(boat).flatMap((item) =>
    item.kind === 'spare'
      ? [{ ...item, state: item.reasons.length > 0 ? ('watch' as const) : ('fit' as const), chance: 1 }]
      : [],
  );
  return cleaned(storesOf(boat.loaded.boat, { at: instant(at), items }));
}

/** What is short or to be bought first, the rest by locker, those nobody counted last: as many as what is typed fits. */
export function shelves(document: StoresDocument, find: string): readonly Shelf[] {
  const begun = find.trim().toLocaleLowerCase();
  const fits = ({ id, name, locker }: Shown) =>
    id.startsWith(begun) || beginsIn(name, begun) || (locker !== null && beginsIn(locker, begun));
  const stores = document.stores.filter(fits);
  const wanting = stores.filter(isWanting);
  const rest = stores.filter((store) => !isWanting(store));
  const lockers = [...new Set(rest.map(({ locker }) => locker))];
  return [
    { title: 'SHORT OR TO BUY', stores: wanting },
    ...lockers.map((locker) => ({
      title: locker === null ? 'STOWED, NOT SAID WHERE' : locker.toLocaleUpperCase(),
      stores: rest.filter((store) => store.locker === locker),
    })),
    {
      title: 'NOT ENTERED YET',
      stores: document.notEntered.map((one) => ({ ...one, count: null })).filter(fits),
    },
  ].filter((shelf) => shelf.stores.length > 0);
}

function isWanting({ state, buy }: StoreDocument): boolean {
  return state !== 'fit' || buy > 0;
}

/** The stores shown, in order, and which is in hand. */
export function inHand(sight: Sight, { find, chosen }: StoresPage): { ids: readonly string[]; at: number } {
  const document = storesDocument(sight);
  const ids = shelves(document, find.text).flatMap(({ stores }) => stores.map(({ id }) => id));
  return { ids, at: Math.max(0, ids.indexOf(chosen ?? '')) };
}
