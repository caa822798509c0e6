import { type Boat, type Item, itemsOf } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import type { Action } from './answer.ts';
import type { Work } from './requirements.ts';

/** Something that could be done, and what doing it changes. */
export interface Candidate {
  readonly do: Action['do'];
  readonly item: string;
  readonly takes: readonly { readonly spare: string; readonly count: number }[];
  readonly minutes: number;
  readonly pouredL: number | null;
  readonly buys: number | null;
}

/** Minutes where the boat file gives none. Common practice, no source; the skipper's to change (`minutes`). */
const USUAL_MINUTES: { readonly [D in Action['do']]: number } = {
  'top up': 10,
  refill: 60,
  renew: 30,
  service: 60,
  look: 5,
  'put right': 60,
  buy: 60,
  replace: 30,
  'stop the leak': 60,
};

/** What can be done for an item as it is: nothing for a service whose parts are short or a fluid that is full. */
export function candidatesFor(item: Item, condition: Condition, beliefs: Beliefs): readonly Candidate[] {
  const aboard = (spare: string | undefined) =>
    spare === undefined ? null : (condition.spares.get(spare)?.count ?? null);
  const candidate = (what: Action['do'], more: Partial<Candidate> = {}): Candidate => ({
    do: what,
    item: item.id,
    takes: [],
    minutes: item.minutes ?? USUAL_MINUTES[what],
    pouredL: null,
    buys: null,
    ...more,
  });
  switch (item.kind) {
    case 'fluid': {
      const belief = beliefs.fluids.get(item.id);
      if (!belief) return [candidate('look')];
      const leak = item.fuel && belief.leakClass !== null && belief.leakClass !== 'dry';
      return [
        ...(leak ? [candidate('stop the leak')] : []),
        ...toppingUp(item, belief.level.mean, aboard(item.stock), candidate),
      ];
    }
    case 'anode': {
      if (!beliefs.anodes.get(item.id)) return [candidate('look')];
      if (item.spare === undefined) return [candidate('renew')];
      return (aboard(item.spare) ?? 0) >= 1
        ? [candidate('renew', { takes: [{ spare: item.spare, count: 1 }] })]
        : [];
    }
    case 'service':
      return item.uses.every(({ spare, count }) => (aboard(spare) ?? 0) >= count)
        ? [candidate('service', { takes: item.uses })]
        : [];
    case 'spare': {
      const count = aboard(item.id);
      if (count === null) return [];
      const buys = Math.max(item.wanted ?? 0, 1) - count;
      return buys > 0 ? [candidate('buy', { buys })] : [];
    }
    case 'check':
      return [candidate(condition.checks.get(item.id)!.answers.at(-1)?.ok === false ? 'put right' : 'look')];
    case 'dated':
      return [candidate('replace')];
  }
}

/** All candidates of the boat, in walking order. */
export function allCandidates(boat: Boat, condition: Condition, beliefs: Beliefs): readonly Candidate[] {
  return itemsOf(boat).flatMap((item) => candidatesFor(item, condition, beliefs));
}

/** The boat as she would be with all of these done. */
export function workOf(candidates: readonly Candidate[]): Work {
  const stores = new Map<string, number>();
  const add = (spare: string, count: number) => stores.set(spare, (stores.get(spare) ?? 0) + count);
  for (const { item, takes, buys } of candidates) {
    for (const { spare, count } of takes) add(spare, -count);
    if (buys !== null) add(item, buys);
  }
  return {
    done: new Set(
      candidates.filter(({ pouredL, buys }) => pouredL === null && buys === null).map(({ item }) => item),
    ),
    poured: new Map(candidates.flatMap(({ item, pouredL }) => (pouredL === null ? [] : [[item, pouredL]]))),
    stores,
  };
}

/** A tenth of a decilitre: less is not worth unscrewing a cap for. */
const LEAST_POURED_L = 0.01;

function toppingUp(
  fluid: Fluid,
  levelL: number,
  stockL: number | null,
  candidate: (what: Action['do'], more: Partial<Candidate>) => Candidate,
): readonly Candidate[] {
  const room = fluid.full - levelL;
  if (room < LEAST_POURED_L) return [];
  if (fluid.stock === undefined) return [candidate('refill', { pouredL: room })];
  const pouredL = Math.round(Math.min(room, stockL ?? 0) * 100) / 100;
  return pouredL < LEAST_POURED_L
    ? []
    : [candidate('top up', { pouredL, takes: [{ spare: fluid.stock, count: pouredL }] })];
}
