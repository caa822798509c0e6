import type { Boat } from '../boat/boat.ts';
import type { VerdictDocument } from './document.ts';
import { six } from './figures.ts';
import type { ItemDocument } from './item-document.ts';

/** The document of `stores --json`: what is aboard and where, short first; the figures are those of the verdict. Money is the boat's own. */
export interface StoresDocument {
  format: 1;
  boat: string;
  at: string;
  /** In the boat file's order, but what is short or to be bought comes first. Uncounted ones are not among them. */
  stores: StoreDocument[];
  notEntered: { id: string; name: string; locker: string | null }[];
  /** What all that is to be bought costs; `unpriced` counts the things that have no price. */
  cost: { total: number; unpriced: number };
}

export type StoreDocument = Pick<
  Extract<ItemDocument, { kind: 'spare' }>,
  | 'id'
  | 'name'
  | 'state'
  | 'reason'
  | 'reasons'
  | 'unit'
  | 'shortChance'
  | 'cover95'
  | 'buy'
  | 'cost'
  | 'locker'
> & {
  count: number;
  wanted: number | null;
  price: number | null;
  /** What takes it: services by the count, fluids topped up and anodes renewed from it. */
  takenBy: { id: string; name: string; count: number | null }[];
};

type Spare = Extract<ItemDocument, { kind: 'spare' }>;

/** The stores from the answer and the boat file. */
export function storesOf(boat: Boat, { at, items }: Pick<VerdictDocument, 'at' | 'items'>): StoresDocument {
  const spares = items.filter((item): item is Spare => item.kind === 'spare');
  const stores = spares.flatMap((spare) => (spare.count === null ? [] : [storeOf(boat, spare, spare.count)]));
  const toBuy = stores.filter(({ buy }) => buy > 0);
  return {
    format: 1,
    boat: boat.name,
    at,
    stores: stores.toSorted((a, b) => rank(a) - rank(b)),
    notEntered: spares
      .filter(({ count }) => count === null)
      .map(({ id, name, locker }) => ({ id, name, locker })),
    cost: {
      total: six(toBuy.reduce((sum, { cost }) => sum + (cost ?? 0), 0)),
      unpriced: toBuy.filter(({ cost }) => cost === null).length,
    },
  };
}

function storeOf(boat: Boat, item: Spare, count: number): StoreDocument {
  const { id, name, state, reason, reasons, unit, shortChance, cover95, buy, cost, locker } = item;
  const spare = boat.spares.find((one) => one.id === id);
  const price = spare?.price ?? null;
  return {
    id,
    name,
    state,
    reason,
    reasons,
    count,
    unit,
    wanted: spare?.wanted ?? null,
    shortChance,
    cover95,
    buy,
    price,
    cost,
    locker,
    takenBy: takersOf(boat, id),
  };
}

function takersOf(boat: Boat, spare: string): StoreDocument['takenBy'] {
  const services = boat.services.flatMap(({ id, name, uses }) => {
    const used = uses.find((part) => part.spare === spare);
    return used === undefined ? [] : [{ id, name, count: used.count }];
  });
  const fluids = boat.fluids.filter(({ stock }) => stock === spare);
  const anodes = boat.anodes.filter((anode) => anode.spare === spare);
  return [
    ...services,
    ...fluids.map(({ id, name }) => ({ id, name, count: null })),
    ...anodes.map(({ id, name }) => ({ id, name, count: 1 })),
  ];
}

const WORST_FIRST = { unfit: 0, watch: 1, unseen: 2, fit: 3 };

function rank({ state, buy }: StoreDocument): number {
  return WORST_FIRST[state] - (state === 'fit' && buy > 0 ? 0.5 : 0);
}
