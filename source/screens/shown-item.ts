import { type Boat, consequenceOf, type Item, itemsOf } from '../boat/boat.ts';
import type { Condition, FluidRecord } from '../condition/condition.ts';
import type { State } from '../readiness/answer.ts';
import { cleaned } from '../words/cleaned.ts';
import type { ItemDocument } from '../words/item-document.ts';
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
      const count = countOf(condition, item.id);
      const locker = item.locker === undefined ? null : cleaned(item.locker);
      const unknown = { rate: null, shortChance: null, cover95: null, buy: 0, cost: null };
      return { ...common, ...unknown, kind: 'spare', unit: item.unit, count, locker };
    }
    case 'service':
      return { ...common, kind: 'service', dueHours: null, dueOn: null, dueInHours: null };
    case 'check': {
      const ok = condition.checks.get(item.id)?.answers.at(-1)?.ok ?? null;
      return { ...common, kind: 'check', ok, when: item.when };
    }
    case 'dated':
      return { ...common, kind: 'dated', expires: condition.dated.get(item.id)?.expires ?? null };
  }
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

function countOf(condition: Condition, id: string): number | null {
  return condition.spares.get(id)?.count ?? null;
}
