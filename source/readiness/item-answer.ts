import { type Boat, consequenceOf } from '../boat/boat.ts';
import type { Spare } from '../boat/spare.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs, DemandBelief } from '../inference/belief.ts';
import { eventsStock } from '../maths/negative-binomial.ts';
import type { ItemAnswer, ItemFacts } from './answer.ts';
import { standingAnswer } from './checks.ts';
import { fluidFigures } from './fluid-answer.ts';
import type { JudgedItem } from './judged.ts';
import type { Passages } from './passages.ts';
import type { Requirements } from './requirements.ts';
import { dueFacts } from './services.ts';
import { COVER, coverStock, usesExpected } from './spares.ts';

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
      const stockL = item.stock === undefined ? null : (condition.spares.get(item.stock)?.count ?? null);
      const figures =
        ahead === undefined ? NOTHING_AHEAD : fluidFigures(item, belief!, ahead, stockL, passages);
      return { ...facts, kind: item.kind, now, lookedAt, belief, ...figures };
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
      const done = condition.services.get(item.id)!.done.at(-1);
      const due = dueFacts(boat, item, condition);
      return { ...facts, kind: item.kind, now: null, lookedAt: done?.at ?? null, ...due };
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

const NOTHING_AHEAD = { lookAgain: null, endL: null, endsAt: null, lasts: null };

/** To the number wanted, or what covers the uses until more can be had, whichever is larger; nothing of what nobody has counted. */
function toBuy(spare: Spare, count: number | null, demand: DemandBelief | null, passages: Passages): number {
  if (count === null) return 0;
  const days = spare.resupplyDays;
  const exposure = days === undefined || demand === null ? 0 : days * exposureADay(demand, passages);
  const untilResupply = demand === null || exposure === 0 ? 0 : eventsStock(COVER, { ...demand, exposure });
  return Math.max(0, Math.max(spare.wanted ?? 0, untilResupply) - count);
}

/** What a day lying counts for: itself, or its engine hours. */
function exposureADay({ per, engine }: DemandBelief, { waiting, count }: Passages): number {
  if (per === 'day') return 1;
  const hours = engine === null ? undefined : waiting.get(engine);
  return hours === undefined ? 0 : hours.reduce((sum, one) => sum + one, 0) / count;
}
