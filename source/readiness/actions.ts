import type { Item } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Spare } from '../boat/spare.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import type { Action } from './answer.ts';
import { LEAST_POURED_L } from './doable.ts';
import type { Work } from './requirements.ts';

/** Something that could be done, and what doing it changes. */
export interface Candidate {
  readonly do: Action['do'];
  readonly item: string;
  readonly takes: readonly { readonly spare: string; readonly count: number }[];
  readonly minutes: number;
  /** Poured in, L; with a stock as much of it as that has. */
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

/** What can be done for an item as it is, were its parts aboard (`doable` tells which of it they are for); nothing for a fluid that is full. */
export function candidatesFor(item: Item, condition: Condition, beliefs: Beliefs): readonly Candidate[] {
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
        ...toppingUp(item, belief.level.mean, candidate),
      ];
    }
    case 'anode': {
      if (!beliefs.anodes.get(item.id)) return [candidate('look')];
      if (item.spare === undefined) return [candidate('renew')];
      return [candidate('renew', { takes: [{ spare: item.spare, count: 1 }] })];
    }
    case 'service':
      return [candidate('service', { takes: item.uses })];
    case 'spare':
      return [];
    case 'check':
      return [candidate(condition.checks.get(item.id)!.answers.at(-1)?.ok === false ? 'put right' : 'look')];
    case 'dated':
      return [candidate('replace')];
  }
}

/** To the number wanted aboard, and enough for what is to be taken of it; null where there is that much, or nobody has counted. */
export function buying(spare: Spare, { spares }: Condition, taken: number): Candidate | null {
  const { count } = spares.get(spare.id)!;
  if (count === null) return null;
  const buys = Math.max(spare.wanted ?? 0, 1, taken) - count;
  if (buys <= 0) return null;
  const minutes = spare.minutes ?? USUAL_MINUTES.buy;
  return { do: 'buy', item: spare.id, takes: [], minutes, pouredL: null, buys };
}

/** How long they take together. */
export function minutesOf(work: readonly Pick<Candidate, 'minutes'>[]): number {
  return work.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** How much of a spare they take together. */
export function takenOf(work: readonly Pick<Candidate, 'takes'>[], spare: string): number {
  return work
    .flatMap(({ takes }) => takes)
    .reduce((sum, one) => sum + (one.spare === spare ? one.count : 0), 0);
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

function toppingUp(
  fluid: Fluid,
  levelL: number,
  candidate: (what: Action['do'], more: Partial<Candidate>) => Candidate,
): readonly Candidate[] {
  const room = fluid.full - levelL;
  if (room < LEAST_POURED_L) return [];
  if (fluid.stock === undefined) return [candidate('refill', { pouredL: room })];
  const pouredL = Math.round(room * 100) / 100;
  return [candidate('top up', { pouredL, takes: [{ spare: fluid.stock, count: pouredL }] })];
}
