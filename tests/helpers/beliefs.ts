import type { Boat } from '../../source/boat/boat.ts';
import type { Condition } from '../../source/condition/condition.ts';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Forecast } from '../../source/forecast/forecast.ts';
import type { Beliefs, DemandBelief, FluidBelief, Spread } from '../../source/inference/belief.ts';
import { believe } from '../../source/inference/believe.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { judge } from '../../source/readiness/judge.ts';

/** A fluid of which everything is known: level L, losses in L per engine hour and L per day. */
export function certainFluid(levelL: number, run: number, rest: number): FluidBelief {
  const exactly = (mean: number): Spread => ({ mean, sd: 0, p10: mean, p90: mean });
  const all = (count: number, value: number) => new Float64Array(count).fill(value);
  return {
    level: exactly(levelL),
    lately: { readings: [], done: [], line: [] },
    run: exactly(run),
    rest: exactly(rest),
    usualDay: exactly(rest),
    usualHours: 0,
    leak: { tight: 1, running: 0, lying: 0, both: 0 },
    split: 'known',
    toSettle: null,
    job: null,
    changedAt: null,
    rising: 0,
    leakClass: null,
    leastLossLPerDay: 0,
    draw: (count) => ({ levelL: all(count, levelL), run: all(count, run), rest: all(count, rest) }),
  };
}

export interface Given {
  readonly boat: Boat;
  readonly entries?: readonly Entry[];
  readonly at: number;
  readonly fluids?: { readonly [id: string]: FluidBelief };
  readonly demand?: { readonly [id: string]: DemandBelief };
  readonly condition?: Partial<Condition>;
  readonly forecast?: Forecast;
  readonly seed?: number;
  readonly simulations?: number;
}

/** The model's answer for a boat and her log, with the beliefs named taken instead of those the log gives. */
export function judged({
  boat,
  entries = [],
  at,
  fluids = {},
  demand = {},
  condition: changed = {},
  forecast,
  seed = 1,
  simulations = 4096,
}: Given) {
  const condition = { ...conditionAt(boat, entries, at), ...changed };
  const read = believe(boat, condition);
  const beliefs: Beliefs = {
    ...read,
    fluids: new Map([...read.fluids, ...Object.entries(fluids)]),
    demand: new Map([...read.demand, ...Object.entries(demand)]),
  };
  return judge({ boat, condition, beliefs, forecast: forecast ?? null, seed, simulations, trouble: [] });
}
