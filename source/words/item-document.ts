import type { Boat } from '../boat/boat.ts';
import type { JobEffect, LevelHistory, LevelPoint, Spread } from '../inference/belief.ts';
import type { ItemAnswer } from '../readiness/answer.ts';
import { assert } from '../trouble.ts';
import type { ItemDocument, LevelPointDocument, LevelsDocument, SpreadDocument } from './document.ts';
import { instant, six, sixOrNull } from './figures.ts';
import { sentence } from './say.ts';
import { whyPhrase } from './why.ts';

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
    levels: belief && levelsOf(belief.lately, item),
    toSettle: belief?.toSettle ? { runs: belief.toSettle.runs, hours: six(belief.toSettle.hours) } : null,
    lasts: item.lasts && {
      days: sixOrBeyond(item.lasts.days),
      withStores: item.lasts.withStores === null ? null : sixOrBeyond(item.lasts.withStores),
    },
  };
}

function levelsOf(
  { readings, done, line }: LevelHistory,
  { endL, endsAt }: Pick<AnswerOf<'fluid'>, 'endL' | 'endsAt'>,
): LevelsDocument {
  const told = line.map(pointOf);
  const end = endL === null || endsAt === null ? null : pointOf({ at: endsAt, ...endL });
  return {
    readings: readings.map(({ at, levelL, off }) => ({ at: instant(at), value: six(levelL), off })),
    done: done.map((deed) =>
      deed.kind === 'topup'
        ? { at: instant(deed.at), kind: deed.kind, amount: six(deed.amountL) }
        : { at: instant(deed.at), kind: deed.kind },
    ),
    line: told,
    ahead: end === null ? [] : [...told.slice(-1), end],
  };
}

function sixOrBeyond(value: number | 'beyond'): number | 'beyond' {
  return value === 'beyond' ? value : six(value);
}

/** No level is below nothing. */
function pointOf({ at, mean, p10, p90 }: LevelPoint): LevelPointDocument {
  const level = (litres: number) => six(Math.max(0, litres));
  return { at: instant(at), mean: level(mean), p10: level(p10), p90: level(p90) };
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
