import { type Boat, consequenceOf, type Item, itemsOf } from '../boat/boat.ts';
import type { Condition, FluidRecord } from '../condition/condition.ts';
import type { State } from '../readiness/answer.ts';
import { findingAtOnce } from '../readiness/findings.ts';
import { dueFacts } from '../readiness/services.ts';
import { cleaned } from '../words/cleaned.ts';
import { instant, sixOrNull } from '../words/figures.ts';
import type { ItemDocument } from '../words/item-document.ts';
import { sentence } from '../words/say.ts';
import { whyPhrase } from '../words/why.ts';
import type { BoatShown, Loaded } from './model.ts';

/** An item as a page shows it: the document's, or, until the first reckoning is done, what the log alone says of it, its state not known. */
export type ShownItem = Shown<ItemDocument>;
type Shown<T> = T extends unknown
  ? Omit<T, 'state' | 'chance'> & { state: State | null; chance: number | null }
  : never;

/** Every item, in the order of the boat file. */
export function shownItems(boat: BoatShown & { is: 'open' }): readonly ShownItem[] {
  return boat.document?.items ?? waiting(boat.loaded);
}

function waiting({ boat, condition }: Loaded): readonly ShownItem[] {
  return itemsOf(boat).map((item) => waitingItem(item, boat, condition));
}

function waitingItem(item: Item, boat: Boat, condition: Condition): ShownItem {
  const common = {
    id: item.id,
    name: cleaned(item.name),
    consequence: consequenceOf(boat, item),
    state: null,
    chance: null,
    goodUntil: null,
    now: null,
    reason: null,
    reasons: [],
    lookedAt: null,
  };
  const told = () => {
    const reasons = reasonsAtOnce(item, boat, condition);
    return { reason: reasons[0] ?? null, reasons };
  };
  switch (item.kind) {
    case 'fluid': {
      const { low, full, reserve = low } = item;
      const value = lastLevel(condition.fluids.get(item.id));
      const now = value === null ? null : { value, sd: 0, unit: 'L' };
      return { ...common, ...UNRECKONED, kind: 'fluid', now, low, full, reserve };
    }
    case 'anode': {
      const value = condition.anodes.get(item.id)?.fittings.at(-1)?.looks.at(-1)?.share;
      const now = value === undefined ? null : { value, sd: 0, unit: 'share' };
      return {
        ...common,
        kind: 'anode',
        now,
        wear: null,
        reachesLimit: null,
        limit: item.limit,
        currentA: null,
      };
    }
    case 'spare': {
      const count = condition.spares.get(item.id)?.count ?? null;
      const locker = item.locker === undefined ? null : cleaned(item.locker);
      const buy = count === null ? 0 : Math.max(0, (item.wanted ?? 0) - count);
      const cost = item.price === undefined ? null : item.price * buy;
      const unknown = { rate: null, shortChance: null, cover95: null };
      return { ...common, ...told(), ...unknown, kind: 'spare', unit: item.unit, count, buy, cost, locker };
    }
    case 'service': {
      const { dueHours, dueOn, dueInHours } = dueFacts(boat, item, condition);
      return {
        ...common,
        ...told(),
        kind: 'service',
        dueHours: sixOrNull(dueHours),
        dueOn: dueOn === null ? null : instant(dueOn),
        dueInHours: sixOrNull(dueInHours),
      };
    }
    case 'check': {
      const ok = condition.checks.get(item.id)?.answers.at(-1)?.ok ?? null;
      return { ...common, kind: 'check', ok, when: item.when };
    }
    case 'dated':
      return { ...common, ...told(), kind: 'dated', expires: condition.dated.get(item.id)?.expires ?? null };
  }
}

/** Why it is not plainly fit, as far as no passage need be simulated to know. */
function reasonsAtOnce(item: Item, boat: Boat, condition: Condition): readonly string[] {
  if (item.kind !== 'spare' && item.kind !== 'service' && item.kind !== 'dated') return [];
  const { pastLimit, unseen, watch } = findingAtOnce(boat, item, condition);
  return [...pastLimit, ...unseen, ...watch].map((why) => cleaned(sentence(whyPhrase(why, item, boat))));
}

const UNRECKONED = {
  run: null,
  rest: null,
  usualDay: null,
  leak: null,
  split: null,
  lookAgain: null,
  job: null,
  atEnd: null,
  levels: null,
  toSettle: null,
  lasts: null,
};

function lastLevel(record: FluidRecord | undefined): number | null {
  const reading = record?.events.findLast((event) => event.kind === 'reading' && event.off === 'on');
  return reading?.kind === 'reading' ? reading.levelL : null;
}
