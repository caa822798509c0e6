import { type Boat, engineOf } from '../boat/boat.ts';
import type { Engine } from '../boat/engine.ts';
import type { Spare } from '../boat/spare.ts';
import type { Condition } from '../condition/condition.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';
import { believingAnode } from './anode.ts';
import type { AnodeBelief, Beliefs, DemandBelief, FluidBelief, WaitingBelief } from './belief.ts';
import { trendOf } from './check-trend.ts';
import { believingFluid } from './fluid.ts';

/** What the log's readings, set against the boat file's usual figures, say of every rate aboard. */
export function believe(boat: Boat, condition: Condition): Beliefs {
  return inOneGo(believing(boat, condition));
}

/** The same in turns. */
export function* believing(boat: Boat, condition: Condition): Turns<Beliefs> {
  const waiting = new Map(boat.engines.map((engine) => [engine.id, waitingHours(engine, condition)]));
  const fluids = new Map<string, FluidBelief | null>();
  for (const fluid of boat.fluids) {
    fluids.set(fluid.id, yield* believingFluid(fluid, boat.engines, condition, waiting));
    yield;
  }
  const anodes = new Map<string, AnodeBelief | null>();
  for (const anode of boat.anodes) {
    anodes.set(anode.id, yield* believingAnode(anode, condition));
    yield;
  }
  return {
    fluids,
    anodes,
    demand: new Map(boat.spares.map((spare) => [spare.id, demandFor(boat, spare, condition)])),
    waiting,
    trends: new Map(
      boat.checks.map((check) => [check.id, trendOf(check, condition.checks.get(check.id)!, condition.at)]),
    ),
  };
}

/** A week of the usual hours weighs as much as seven days seen (model 2). */
const USUAL_DAYS = 7;

function waitingHours({ id, usualHoursPerDay }: Engine, condition: Condition): WaitingBelief {
  const { hours, days } = condition.engines.get(id)!.lately;
  const shape = USUAL_DAYS * usualHoursPerDay + hours;
  return shape > 0 ? { shape, rate: USUAL_DAYS + days } : { fixed: 0 };
}

/** Unplanned uses: the rate expected, worth `weight` events, and the uses counted since over their exposure (model 5). */
function demandFor(boat: Boat, spare: Spare, condition: Condition): DemandBelief | null {
  const { expected } = spare;
  const perHour = expected?.perEngineHour;
  const usual = perHour ?? expected?.perDay;
  if (expected === undefined || usual === undefined || usual === 0) return null;
  const { uses, exposure } = condition.spares.get(spare.id)!;
  return {
    per: perHour === undefined ? 'day' : 'engine hour',
    engine: perHour === undefined ? null : engineOf(boat, expected.engine),
    shape: expected.weight + uses.length,
    rate: expected.weight / usual + exposure,
  };
}
