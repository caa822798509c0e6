import type { LeakClass } from '../condition/condition.ts';
import type { Stream } from '../maths/stream.ts';

/** A figure with its doubt. p10 and p90: 8 chances in 10 lie between. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
  readonly p10: number;
  readonly p90: number;
}

/** A level at an instant, ms, as all readings together tell it, L. */
export interface LevelPoint {
  readonly at: number;
  readonly mean: number;
  readonly p10: number;
  readonly p90: number;
}

/** How a level has gone lately, oldest first: what was read, what was done, and the line that all readings together make of it, to now. Instants in ms. */
export interface LevelHistory {
  readonly readings: readonly {
    readonly at: number;
    readonly levelL: number;
    readonly off: 'on' | 'below' | 'above';
  }[];
  readonly done: readonly LevelDeed[];
  readonly line: readonly LevelPoint[];
}

export type LevelDeed = { readonly at: number } & (
  | { readonly kind: 'topup'; readonly amountL: number }
  | { readonly kind: 'change' | 'job' }
);

/** One draw a simulated passage, arrays of equal length. */
export interface FluidDraws {
  /** Level now, L. */
  readonly levelL: Float64Array;
  /** Loss, L a weighted running hour. */
  readonly run: Float64Array;
  /** Loss, L per day. */
  readonly rest: Float64Array;
}

/** What the readings say of one fluid (model 3). */
export interface FluidBelief {
  readonly level: Spread;
  readonly lately: LevelHistory;
  readonly run: Spread;
  readonly rest: Spread;
  /** Loss on a usual day of the last fortnight, L. */
  readonly usualDay: Spread;
  /** Weighted running hours of such a day. */
  readonly usualHours: number;
  readonly leak: {
    readonly tight: number;
    readonly running: number;
    readonly lying: number;
    readonly both: number;
  };
  readonly split: 'known' | 'cannot tell';
  /** Where they cannot be told apart: to dip before and after so many charging runs of so many hours would tell; null where that would not do, or nothing is to be settled. */
  readonly toSettle: { readonly runs: number; readonly hours: number } | null;
  readonly job: JobEffect | null;
  /** When the loss changed by itself, or null. */
  readonly changedAt: number | null;
  /** Chance that the level rose with nothing poured in. */
  readonly rising: number;
  readonly leakClass: LeakClass | null;
  /** Where drops were seen to fall: the least it loses by them, L a day; 0 otherwise. Then what is aboard must cover twice the loss. */
  readonly leastLossLPerDay: number;
  /** Draws for `count` passages; `streamOf(part)` gives this fluid's own named streams, `hoursADay` each passage's running hours a day while lying. */
  draw(
    count: number,
    streamOf: (part: string) => Stream,
    hoursADay: (engine: string) => Float64Array,
  ): FluidDraws;
}

/** Whether a job helped: the loss on a usual day, after against before. */
export interface JobEffect {
  readonly at: number;
  readonly text: string;
  readonly lowerChance: number;
  readonly ratio: { readonly p10: number; readonly p50: number; readonly p90: number };
  /** More days of readings until 9 in 10 either way; null when more would not settle it within a year. */
  readonly daysToSettle: number | null;
}

/** What the looks say of one anode (model 4). Wear is share of a new anode a day. */
export interface AnodeBelief {
  readonly share: Spread;
  readonly wear: Spread;
  readonly flakes: boolean;
  /** Instants, ms: when it reaches its limit. */
  readonly reachesLimit: { readonly p10: number; readonly p50: number; readonly p90: number };
  /** Chance that it wears at more than 1.5 x the earlier anodes' rate; null with none earlier. */
  readonly wearsFast: number | null;
  /** Days looked at without wear, when there is none to see; else null. */
  readonly noWearDays: number | null;
  readonly wrongAlloy: boolean;
  /** Mean galvanic current of the one fitted now, A; null without a mass. */
  readonly currentA: number | null;
  draw(
    count: number,
    streamOf: (part: string) => Stream,
  ): { readonly share: Float64Array; readonly wear: Float64Array };
}

/** A rate of unplanned uses, gamma, per engine hour or per day (model 5). */
export interface DemandBelief {
  readonly per: 'engine hour' | 'day';
  readonly engine: string | null;
  readonly shape: number;
  /** In units of exposure: hours or days. */
  readonly rate: number;
}

/** When the number a check is answered with changed by itself, and what it was on average before and since. */
export interface CheckTrend {
  readonly at: number;
  readonly way: 'up' | 'down';
  readonly before: number;
  readonly after: number;
}

/** Running hours a day while waiting, gamma (model 2). `fixed` where usual and seen are both nothing. */
export type WaitingBelief = { readonly shape: number; readonly rate: number } | { readonly fixed: 0 };

export interface Beliefs {
  readonly fluids: ReadonlyMap<string, FluidBelief | null>;
  readonly anodes: ReadonlyMap<string, AnodeBelief | null>;
  readonly demand: ReadonlyMap<string, DemandBelief | null>;
  readonly waiting: ReadonlyMap<string, WaitingBelief>;
  readonly trends: ReadonlyMap<string, CheckTrend | null>;
}
