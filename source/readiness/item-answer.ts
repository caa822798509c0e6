import { type Boat, consequenceOf } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Spare } from '../boat/spare.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs, DemandBelief, FluidBelief, Spread } from '../inference/belief.ts';
import { eventsStock } from '../maths/negative-binomial.ts';
import type { ItemAnswer, ItemFacts } from './answer.ts';
import { standingAnswer } from './checks.ts';
import { type FluidAhead, lostL } from './fluids.ts';
import type { JudgedItem } from './judged.ts';
import type { Passages } from './passages.ts';
import type { Requirements } from './requirements.ts';
import { dueOf } from './services.ts';
import { COVER, coverStock, usesExpected } from './spares.ts';

/** Model 3.8: look again before 1 chance in 10 of reaching the low mark. */
const LOOK_AGAIN_CHANCE = 0.1;

/** One item's part of the answer: its state and figures. `goodUntil` in ms. */
export function itemAnswer(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  { fluidsAhead, demandAhead }: Requirements,
  passages: Passages,
  judged: JudgedItem,
  goodUntil: ItemFacts['goodUntil'],
): ItemAnswer {
  const { item, state, chance, why } = judged;
  const facts = {
    id: item.id,
    name: item.name,
    consequence: consequenceOf(boat, item),
    state,
    chance,
    goodUntil,
    why,
  };
  switch (item.kind) {
    case 'fluid': {
      const belief = beliefs.fluids.get(item.id) ?? null;
      const ahead = fluidsAhead.get(item.id);
      const now = belief && { value: Math.max(0, belief.level.mean), sd: belief.level.sd, unit: 'L' };
      const { lookedAt } = condition.fluids.get(item.id)!;
      const lookAgain = ahead === undefined ? null : lookAgainAfter(item, belief!, ahead, passages);
      const endL = ahead === undefined ? null : spreadOf(levelsAtEnd(ahead, passages));
      return { ...facts, kind: item.kind, now, lookedAt, belief, lookAgain, endL };
    }
    case 'anode': {
      const belief = beliefs.anodes.get(item.id) ?? null;
      const now = belief && { value: belief.share.mean, sd: belief.share.sd, unit: 'share' };
      return { ...facts, kind: item.kind, now, lookedAt: condition.anodes.get(item.id)!.lookedAt, belief };
    }
    case 'spare': {
      const { count, lookedAt } = condition.spares.get(item.id)!;
      const demand = beliefs.demand.get(item.id) ?? null;
      const ahead = demandAhead.get(item.id);
      return {
        ...facts,
        kind: item.kind,
        now: count === null ? null : { value: count, sd: 0, unit: item.unit },
        lookedAt,
        count,
        rate: demand && {
          mean: demand.shape / demand.rate,
          sd: Math.sqrt(demand.shape) / demand.rate,
          per: demand.per,
        },
        shortChance: ahead === undefined || count === null ? null : 1 - chance,
        cover95: ahead === undefined ? null : coverStock(usesExpected(ahead, passages)),
        buy: toBuy(item, count, demand, passages),
      };
    }
    case 'service': {
      const due = dueOf(boat, item, condition);
      const done = condition.services.get(item.id)!.done.at(-1);
      return {
        ...facts,
        kind: item.kind,
        now: null,
        lookedAt: done?.at ?? null,
        dueHours: due.hours,
        dueOn: due.on,
        dueInHours: due.hours === null || due.nowHours === null ? null : due.hours - due.nowHours,
      };
    }
    case 'check': {
      const record = condition.checks.get(item.id)!;
      const answer = standingAnswer(item, record);
      const value = answer?.value ?? null;
      return {
        ...facts,
        kind: item.kind,
        now: value === null ? null : { value, sd: 0, unit: item.unit ?? '' },
        lookedAt: record.lookedAt,
        ok: answer?.ok ?? null,
        leaving: item.when === 'leaving',
        unsettled: record.unsettledBy !== null,
      };
    }
    case 'dated': {
      const { expires, lookedAt } = condition.dated.get(item.id)!;
      return { ...facts, kind: item.kind, now: null, lookedAt, expires };
    }
  }
}

/** By engine hours under way where running is most of the loss, else by days of waiting. Null where nothing is lost. */
function lookAgainAfter(
  fluid: Fluid,
  belief: FluidBelief,
  { draws, waitingL }: FluidAhead,
  { count }: Passages,
): { engineHours: number } | { days: number } | null {
  const byHours = fluid.engine !== undefined && belief.run.mean > belief.rest.mean / 24;
  const time = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const aboveLow = draws.levelL[i]! - fluid.low;
    const loss = byHours ? draws.run[i]! + draws.rest[i]! / 24 : 24 * waitingL[i]!;
    time[i] = aboveLow <= 0 ? 0 : aboveLow / loss;
  }
  const until = time.sort()[Math.floor(LOOK_AGAIN_CHANCE * count)]!;
  if (until === Infinity) return null;
  return byHours ? { engineHours: until } : { days: until };
}

/** Levels at the end of the stretch, leaving now, L. */
function levelsAtEnd(ahead: FluidAhead, passages: Passages): Float64Array {
  return lostL(ahead, 0, passages).map((lost, i) => ahead.draws.levelL[i]! - lost);
}

/** Mean, sd and 10/90 % of simulated values. */
function spreadOf(values: Float64Array): Spread {
  const sorted = values.toSorted();
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  const at = (share: number) => sorted[Math.floor(share * values.length)]!;
  return { mean, sd: Math.sqrt(variance), p10: at(0.1), p90: at(0.9) };
}

/** To the number wanted, or what covers the uses until more can be had, whichever is larger. */
function toBuy(spare: Spare, count: number | null, demand: DemandBelief | null, passages: Passages): number {
  const days = spare.resupplyDays;
  const exposure = days === undefined || demand === null ? 0 : days * exposureADay(demand, passages);
  const untilResupply = demand === null || exposure === 0 ? 0 : eventsStock(COVER, { ...demand, exposure });
  return Math.max(0, Math.max(spare.wanted ?? 0, untilResupply) - (count ?? 0));
}

/** What a day lying counts for: itself, or its engine hours. */
function exposureADay({ per, engine }: DemandBelief, { waiting, count }: Passages): number {
  if (per === 'day') return 1;
  const hours = engine === null ? undefined : waiting.get(engine);
  return hours === undefined ? 0 : hours.reduce((sum, one) => sum + one, 0) / count;
}
