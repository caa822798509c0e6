import type { Boat } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { anodeLatest } from './anodes.ts';
import { standingAnswer } from './checks.ts';
import { datedLatest } from './dated.ts';
import { type FluidAhead, fluidAhead, sharedStockLatest } from './fluids.ts';
import { always, type Latest, never } from './latest.ts';
import type { Passages } from './passages.ts';
import { dueOf, serviceLatest } from './services.ts';
import { type DemandAhead, demandAhead, spareLatest } from './spares.ts';

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
  /** One array an item, in the order of `items`. */
  latest(work: Work): readonly Latest[];
}

export interface Requirements {
  readonly all: readonly Requirement[];
  readonly fluidsAhead: ReadonlyMap<string, FluidAhead>;
  readonly demandAhead: ReadonlyMap<string, DemandAhead>;
}

/** What must hold for every item of the boat, each drawn once from its own named streams. */
export function requirementsOf(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  passages: Passages,
): Requirements {
  const fluidsAhead = new Map<string, FluidAhead>();
  for (const fluid of boat.fluids) {
    const belief = beliefs.fluids.get(fluid.id);
    if (belief) fluidsAhead.set(fluid.id, fluidAhead(fluid, belief, passages));
  }
  const demands = new Map<string, DemandAhead>();
  for (const spare of boat.spares) {
    const demand = beliefs.demand.get(spare.id);
    if (demand) demands.set(spare.id, demandAhead(spare, demand, passages));
  }
  const counted = (spare: string, work: Work) =>
    (condition.spares.get(spare)?.count ?? 0) + (work.stores.get(spare) ?? 0);
  const all: Requirement[] = [
    ...stockGroups(boat.fluids).map((group) =>
      fluidRequirement(group, fluidsAhead, beliefs, counted, passages.count),
    ),
    ...boat.anodes.map((anode) => ({
      items: [anode.id],
      stores: [],
      latest: (work: Work) => [
        anodeLatest(anode, beliefs.anodes.get(anode.id) ?? null, work.done.has(anode.id), passages),
      ],
    })),
    ...boat.spares.map((spare) => ({
      items: [spare.id],
      stores: [spare.id],
      latest: (work: Work) => {
        const ahead = demands.get(spare.id);
        const known = ahead !== undefined && condition.spares.get(spare.id)!.count !== null;
        return [known ? spareLatest(ahead, counted(spare.id, work), passages) : always(passages.count)];
      },
    })),
    ...boat.services.map((service) => ({
      items: [service.id],
      stores: [],
      latest: (work: Work) => [
        serviceLatest(service, dueOf(boat, service, condition), work.done.has(service.id), passages),
      ],
    })),
    ...boat.checks.map((check) => ({
      items: [check.id],
      stores: [],
      latest: (work: Work) => {
        const wrong = standingAnswer(check, condition.checks.get(check.id)!)?.ok === false;
        return [wrong && !work.done.has(check.id) ? never(passages.count) : always(passages.count)];
      },
    })),
    ...boat.dated.map(({ id }) => ({
      items: [id],
      stores: [],
      latest: (work: Work) => {
        const { expires } = condition.dated.get(id)!;
        return [
          expires === null || work.done.has(id) ? always(passages.count) : datedLatest(expires, passages),
        ];
      },
    })),
  ];
  return { all, fluidsAhead, demandAhead: demands };
}

/** A leak of any class on a fuel in the engine space bars leaving until a job and a new look (model 3.7). */
export function fuelLeaks(fluid: Fluid, leakClass: 'dry' | 'wet' | 'drops' | 'falls' | null): boolean {
  return fluid.fuel && leakClass !== null && leakClass !== 'dry';
}

function stockGroups(fluids: readonly Fluid[]): readonly (readonly Fluid[])[] {
  return [...Map.groupBy(fluids, (fluid) => fluid.stock ?? `alone/${fluid.id}`).values()];
}

function fluidRequirement(
  group: readonly Fluid[],
  fluidsAhead: ReadonlyMap<string, FluidAhead>,
  beliefs: Beliefs,
  counted: (spare: string, work: Work) => number,
  count: number,
): Requirement {
  const stock = group[0]!.stock;
  const known = group.filter(({ id }) => fluidsAhead.has(id));
  return {
    items: group.map(({ id }) => id),
    stores: stock === undefined ? [] : [stock],
    latest: (work) => {
      const ahead = known.map(({ id }) => ({
        ahead: fluidsAhead.get(id)!,
        pouredL: work.poured.get(id) ?? 0,
      }));
      const latest = sharedStockLatest(
        ahead,
        stock === undefined ? 0 : Math.max(0, counted(stock, work)),
        count,
      );
      return group.map((fluid) => {
        const leaks = fuelLeaks(fluid, beliefs.fluids.get(fluid.id)?.leakClass ?? null);
        if (leaks && !work.done.has(fluid.id)) return never(count);
        const place = known.indexOf(fluid);
        return place === -1 ? always(count) : latest[place]!;
      });
    },
  };
}
