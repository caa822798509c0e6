import type { Boat } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Condition, LeakClass } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import type { Turns } from '../maths/turns.ts';
import { anodeRoom } from './anodes.ts';
import { allBits, type Bits, noBits } from './bits.ts';
import { standingAnswer } from './checks.ts';
import { endOfDate } from './dated.ts';
import { type FluidAhead, fluidAhead, heldOnSharedStock, roomsOf } from './fluids.ts';
import { always, type Latest, never } from './latest.ts';
import type { Passages } from './passages.ts';
import { heldIn, latestOfAll, type Room } from './room.ts';
import { dueOf, serviceRooms, timeLeft } from './services.ts';
import { type DemandAhead, demandAhead, roomForUses } from './spares.ts';

/** The boat as she would be with some of the work done: what a what-if changes. */
export interface Work {
  /** Items renewed, serviced, put right, or looked at and found well. */
  readonly done: ReadonlySet<string>;
  /** Poured into fluids, L. */
  readonly poured: ReadonlyMap<string, number>;
  /** Change of each spare's count: taken is below zero. */
  readonly stores: ReadonlyMap<string, number>;
}

export const nothingDone: Work = { done: new Set(), poured: new Map(), stores: new Map() };

/** Items judged together, since they share a stock; most are alone. */
export interface Requirement {
  readonly items: readonly string[];
  /** Spares whose count it goes by. */
  readonly stores: readonly string[];
  holding(work: Work): Holding;
}

/** When a requirement holds, with some work done. */
export interface Holding {
  /** The latest departures of its one item; null where they do not tell all: motoring depends on the hour of leaving, or a stock is shared. */
  readonly latest: Latest | null;
  /** The passages in which each of its items holds when leaving at that hour. */
  heldAt(hour: number): readonly Bits[];
}

export interface Requirements {
  readonly all: readonly Requirement[];
  readonly fluidsAhead: ReadonlyMap<string, FluidAhead>;
  readonly demandAhead: ReadonlyMap<string, DemandAhead>;
}

/** What must hold for every item of the boat, each drawn once from its own named streams; in turns. */
export function* requiring(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  passages: Passages,
): Turns<Requirements> {
  const fluidsAhead = new Map<string, FluidAhead>();
  for (const fluid of boat.fluids) {
    yield;
    const belief = beliefs.fluids.get(fluid.id);
    if (belief) fluidsAhead.set(fluid.id, fluidAhead(fluid, belief, passages));
  }
  const demands = new Map<string, DemandAhead>();
  for (const spare of boat.spares) {
    yield;
    const demand = beliefs.demand.get(spare.id);
    if (demand && condition.spares.get(spare.id)!.count !== null)
      demands.set(spare.id, demandAhead(spare, demand, passages));
  }
  const counted = (spare: string, work: Work) =>
    Math.max(0, (condition.spares.get(spare)?.count ?? 0) + (work.stores.get(spare) ?? 0));
  const alone = (
    id: string,
    rooms: (work: Work) => readonly Room[] | 'fails',
    stores: readonly string[] = [],
  ) => requirementOfOne(id, rooms, stores, passages);
  const all: Requirement[] = [
    ...fluidRequirements(boat.fluids, fluidsAhead, beliefs, counted, passages),
    ...boat.anodes.map((anode) => {
      const belief = beliefs.anodes.get(anode.id);
      return alone(anode.id, ({ done }) =>
        belief ? [anodeRoom(anode, belief, done.has(anode.id), passages)] : [],
      );
    }),
    ...boat.spares.map(({ id }) => {
      const ahead = demands.get(id);
      return alone(id, (work) => (ahead ? [roomForUses(ahead, counted(id, work), passages)] : []), [id]);
    }),
    ...boat.services.map((service) => {
      const due = dueOf(boat, service, condition);
      return alone(service.id, ({ done }) => serviceRooms(service, due, done.has(service.id), passages));
    }),
    ...boat.checks.map((check) => {
      const wrong = standingAnswer(check, condition.checks.get(check.id)!)?.ok === false;
      return alone(check.id, ({ done }) => (wrong && !done.has(check.id) ? 'fails' : []));
    }),
    ...boat.dated.map(({ id }) => {
      const { expires } = condition.dated.get(id)!;
      return alone(id, ({ done }) =>
        expires === null || done.has(id) ? [] : [timeLeft(endOfDate(expires), passages)],
      );
    }),
  ];
  return { all, fluidsAhead, demandAhead: demands };
}

/** A leak of any class on a fuel in the engine space bars leaving until a job and a new look (model 3.7). */
export function fuelLeaks(fluid: Fluid, leakClass: LeakClass | null): boolean {
  return fluid.fuel && leakClass !== null && leakClass !== 'dry';
}

/** An item that holds while there is room in all its rooms; with none it always does. */
function requirementOfOne(
  id: string,
  roomsWith: (work: Work) => readonly Room[] | 'fails',
  stores: readonly string[],
  passages: Passages,
): Requirement {
  const { count } = passages;
  return {
    items: [id],
    stores,
    holding(work) {
      const rooms = roomsWith(work);
      if (rooms === 'fails') return { latest: never(count), heldAt: () => [noBits(count)] };
      let held: ((hour: number) => Bits) | null = null;
      return {
        latest: rooms.length === 0 ? always(count) : latestOfAll(rooms, passages),
        heldAt(hour) {
          held ??= heldIn(rooms, passages);
          return [held(hour)];
        },
      };
    },
  };
}

function fluidRequirements(
  fluids: readonly Fluid[],
  fluidsAhead: ReadonlyMap<string, FluidAhead>,
  beliefs: Beliefs,
  counted: (spare: string, work: Work) => number,
  passages: Passages,
): readonly Requirement[] {
  const leaking = (fluid: Fluid, work: Work) =>
    fuelLeaks(fluid, beliefs.fluids.get(fluid.id)?.leakClass ?? null) && !work.done.has(fluid.id);
  const stockOf = (stock: string | undefined, work: Work) => (stock === undefined ? 0 : counted(stock, work));
  const pouredL = (fluid: Fluid, work: Work) => work.poured.get(fluid.id) ?? 0;
  return [...Map.groupBy(fluids, ({ id, stock }) => stock ?? `alone/${id}`).values()].map((group) => {
    const [fluid] = group;
    const { stock } = fluid!;
    const stores = stock === undefined ? [] : [stock];
    if (group.length === 1) {
      const ahead = fluidsAhead.get(fluid!.id);
      return requirementOfOne(
        fluid!.id,
        (work) => {
          if (leaking(fluid!, work)) return 'fails';
          return ahead ? roomsOf({ ahead, pouredL: pouredL(fluid!, work) }, stockOf(stock, work)) : [];
        },
        stores,
        passages,
      );
    }
    return {
      items: group.map(({ id }) => id),
      stores,
      holding(work: Work) {
        const known = group.filter((one) => fluidsAhead.has(one.id));
        const filled = known.map((one) => ({ ahead: fluidsAhead.get(one.id)!, pouredL: pouredL(one, work) }));
        return {
          latest: null,
          heldAt(hour: number) {
            const held = heldOnSharedStock(filled, stockOf(stock, work), hour, passages);
            return group.map((one) => {
              if (leaking(one, work)) return noBits(passages.count);
              return held[known.indexOf(one)] ?? allBits(passages.count);
            });
          },
        };
      },
    };
  });
}
