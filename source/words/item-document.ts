import type { Boat } from '../boat/boat.ts';
import type { JobEffect, Spread } from '../inference/belief.ts';
import type { ItemAnswer, ItemKind, State } from '../readiness/answer.ts';
import { assert } from '../trouble.ts';
import { instant, six, sixOrNull } from './figures.ts';
import { type LevelsDocument, levelsDocument } from './levels-document.ts';
import { sentence } from './say.ts';
import { whyPhrase } from './why.ts';

export interface SpreadDocument {
  mean: number;
  sd: number;
  p10: number;
  p90: number;
}

export type ItemDocument = {
  id: string;
  kind: ItemKind;
  name: string;
  consequence: 'vital' | 'important' | 'minor';
  state: State;
  chance: number;
  goodUntil: string | 'beyond' | null;
  now: { value: number; sd: number; unit: string } | null;
  reason: string | null;
  /** All that is to be said of it, worst first: `reason` is the first. */
  reasons: readonly string[];
  lookedAt: string | null;
} & (
  | {
      kind: 'fluid';
      low: number;
      full: number;
      reserve: number;
      run: SpreadDocument | null;
      rest: SpreadDocument | null;
      usualDay: SpreadDocument | null;
      leak: { tight: number; running: number; lying: number; both: number } | null;
      split: 'known' | 'cannot tell' | null;
      lookAgain: { engineHours: number } | { days: number } | null;
      job: {
        at: string;
        text: string;
        lowerChance: number;
        ratio: { p10: number; p50: number; p90: number };
        daysToSettle: number | null;
      } | null;
      /** Level at the end of the stretch when leaving now. */
      atEnd: SpreadDocument | null;
      levels: LevelsDocument | null;
      /** Where running and lying cannot be told apart: charging runs to dip before and after, and the hours of one; null where that would not tell. */
      toSettle: { runs: number; hours: number } | null;
      /** Days like the usual ones that what is in it lasts in 9 of 10, down to the reserve, and with its stock (null without one). "beyond": ten years. */
      lasts: { days: number | 'beyond'; withStores: number | 'beyond' | null } | null;
    }
  | {
      kind: 'anode';
      wear: { mean: number; sd: number } | null;
      reachesLimit: { p10: string; p50: string; p90: string } | null;
      limit: number;
      /** Mean galvanic current that eats it, A; null without a mass. */
      currentA: number | null;
    }
  | {
      kind: 'spare';
      unit: string;
      count: number | null;
      rate: { mean: number; sd: number; per: 'engine hour' | 'day' } | null;
      shortChance: number | null;
      cover95: number | null;
      buy: number;
      /** Of what is to be bought, in the boat's own money; null without a price. */
      cost: number | null;
      locker: string | null;
    }
  | { kind: 'service'; dueHours: number | null; dueOn: string | null; dueInHours: number | null }
  | { kind: 'check'; ok: boolean | null; when: 'stopped' | 'running' | 'leaving' }
  | { kind: 'dated'; expires: string | null }
);

type AnswerOf<K extends ItemAnswer['kind']> = Extract<ItemAnswer, { kind: K }>;

/** One item's answer as it stands in the document: what all kinds share, then what its kind has. */
export function itemDocument(item: ItemAnswer, boat: Boat): ItemDocument {
  const reasons = item.why.map((why) => sentence(whyPhrase(why, item, boat)));
  return { ...kindDocument(item, boat, reasons[0] ?? null), reasons };
}

type Told<D> = D extends unknown ? Omit<D, 'reasons'> : never;

function kindDocument(item: ItemAnswer, boat: Boat, reason: string | null): Told<ItemDocument> {
  const common = { ...commonOf(item), reason };
  const lookedAt = item.lookedAt === null ? null : instant(item.lookedAt);
  switch (item.kind) {
    case 'fluid':
      return { ...common, kind: item.kind, ...fluidOf(item, boat, lookedAt) };
    case 'anode':
      return { ...common, kind: item.kind, ...anodeOf(item, boat, lookedAt) };
    case 'spare':
      return { ...common, kind: item.kind, ...spareOf(item, boat, lookedAt) };
    case 'service':
      return { ...common, kind: item.kind, ...serviceOf(item, lookedAt) };
    case 'check':
      return { ...common, kind: item.kind, lookedAt, ok: item.ok, when: named(boat.checks, item.id).when };
    case 'dated':
      return { ...common, kind: item.kind, lookedAt, expires: item.expires };
  }
}

function commonOf(item: ItemAnswer) {
  return {
    id: item.id,
    kind: item.kind,
    name: item.name,
    consequence: item.consequence,
    state: item.state,
    chance: six(item.chance),
    goodUntil: typeof item.goodUntil === 'number' ? instant(item.goodUntil) : item.goodUntil,
    now: item.now && { value: six(item.now.value), sd: six(item.now.sd), unit: item.now.unit },
  };
}

function fluidOf(item: AnswerOf<'fluid'>, boat: Boat, lookedAt: string | null) {
  const fluid = named(boat.fluids, item.id);
  const { belief, lookAgain } = item;
  return {
    run: belief && spread(belief.run),
    rest: belief && spread(belief.rest),
    usualDay: belief && spread(belief.usualDay),
    leak: belief && {
      tight: six(belief.leak.tight),
      running: six(belief.leak.running),
      lying: six(belief.leak.lying),
      both: six(belief.leak.both),
    },
    split: belief?.split ?? null,
    lookAgain:
      lookAgain &&
      ('days' in lookAgain ? { days: six(lookAgain.days) } : { engineHours: six(lookAgain.engineHours) }),
    job: belief?.job ? jobOf(belief.job) : null,
    lookedAt,
    low: six(fluid.low),
    full: six(fluid.full),
    reserve: six(fluid.reserve ?? fluid.low),
    atEnd: item.endL && spread(item.endL),
    levels: belief && levelsDocument(belief.lately, item),
    toSettle: belief?.toSettle ? { runs: belief.toSettle.runs, hours: six(belief.toSettle.hours) } : null,
    lasts: item.lasts && {
      days: sixOrBeyond(item.lasts.days),
      withStores: item.lasts.withStores === null ? null : sixOrBeyond(item.lasts.withStores),
    },
  };
}

function sixOrBeyond(value: number | 'beyond'): number | 'beyond' {
  return value === 'beyond' ? value : six(value);
}

function jobOf(job: JobEffect) {
  return {
    at: instant(job.at),
    text: job.text,
    lowerChance: six(job.lowerChance),
    ratio: { p10: six(job.ratio.p10), p50: six(job.ratio.p50), p90: six(job.ratio.p90) },
    daysToSettle: sixOrNull(job.daysToSettle),
  };
}

function anodeOf(item: AnswerOf<'anode'>, boat: Boat, lookedAt: string | null) {
  const { belief } = item;
  return {
    wear: belief && { mean: six(belief.wear.mean), sd: six(belief.wear.sd) },
    reachesLimit: belief && {
      p10: instant(belief.reachesLimit.p10),
      p50: instant(belief.reachesLimit.p50),
      p90: instant(belief.reachesLimit.p90),
    },
    lookedAt,
    limit: six(named(boat.anodes, item.id).limit),
    currentA: sixOrNull(belief?.currentA ?? null),
  };
}

function spareOf(item: AnswerOf<'spare'>, boat: Boat, lookedAt: string | null) {
  const spare = named(boat.spares, item.id);
  return {
    count: sixOrNull(item.count),
    rate: item.rate && { mean: six(item.rate.mean), sd: six(item.rate.sd), per: item.rate.per },
    shortChance: sixOrNull(item.shortChance),
    cover95: sixOrNull(item.cover95),
    buy: six(item.buy),
    lookedAt,
    unit: spare.unit,
    locker: spare.locker ?? null,
    cost: spare.price === undefined ? null : six(spare.price * item.buy),
  };
}

function serviceOf(item: AnswerOf<'service'>, lookedAt: string | null) {
  return {
    dueHours: sixOrNull(item.dueHours),
    dueOn: item.dueOn === null ? null : instant(item.dueOn),
    lookedAt,
    dueInHours: sixOrNull(item.dueInHours),
  };
}

function spread(of: Spread): SpreadDocument {
  return { mean: six(of.mean), sd: six(of.sd), p10: six(of.p10), p90: six(of.p90) };
}

function named<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((one) => one.id === id);
  assert(found, `an answer for ${id}, which the boat does not have`);
  return found;
}
