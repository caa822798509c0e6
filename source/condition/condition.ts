import type { Passage } from '../boat/passage.ts';
import type { EntryOf } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';

/** All that is known of the boat at a moment. Instants are ms since 1970 UTC; maps are keyed by id and have every item of the boat file. */
export interface Condition {
  readonly at: number;
  /** The newest entry seen, or null in an empty log. */
  readonly lastEntryAt: number | null;
  readonly underWay: { readonly since: number } | null;
  /** The anchorage she lies in, from the log or the boat file; null under way or when none is named. */
  readonly anchorage: string | null;
  /** Since when she has lain here: the last arrival, or null when the log has none. */
  readonly arrivedAt: number | null;
  readonly passage: Passage | null;
  readonly crew: number;
  /** From `plan`, else the passage's own. */
  readonly reserveDays: number;
  /** Spans under way, oldest first; `to` is null while still under way. */
  readonly spans: readonly { readonly from: number; readonly to: number | null }[];
  readonly engines: ReadonlyMap<string, EngineRecord>;
  readonly fluids: ReadonlyMap<string, FluidRecord>;
  readonly anodes: ReadonlyMap<string, AnodeRecord>;
  readonly spares: ReadonlyMap<string, SpareRecord>;
  readonly services: ReadonlyMap<string, ServiceRecord>;
  readonly checks: ReadonlyMap<string, CheckRecord>;
  readonly dated: ReadonlyMap<string, DatedRecord>;
  readonly weather: readonly WeatherLook[];
  /** Which forecast the skipper last said counts, by its name, and when; null where the newest does. */
  readonly forecastChoice: { readonly counts: string; readonly at: number } | null;
  /** The skipper's last decision. */
  readonly decision: EntryOf<'decision'> | null;
  readonly gates: readonly EntryOf<'gate'>[];
  readonly clues: readonly EntryOf<'clue'>[];
  readonly jobs: readonly EntryOf<'job'>[];
  /** Entries left out of the sums, or taken with doubt. */
  readonly troubles: readonly Trouble[];
}

/** What the weather was doing, and where that was. */
export interface WeatherLook {
  readonly at: number;
  readonly entry: EntryOf<'weather'>;
  /** Null where the log does not tell. `hours`: since she left on that passage. */
  readonly where:
    | { readonly anchorage: string }
    | { readonly passage: string; readonly hours: number }
    | null;
}

/** Running hours by the meter, made continuous over meter changes and linear between readings. */
export interface EngineRecord {
  readonly readings: readonly { readonly at: number; readonly reading: number; readonly hours: number }[];
  /** Continuous hours at the last reading; null before the first. */
  readonly hours: number | null;
  readonly readAt: number | null;
  /** Continuous hours at an instant: the first reading's before it, the last one's after it. 0 with no readings. */
  hoursAt(at: number): number;
  /** Hours run while lying, and days lain, in the 14 days before the last reading (model 2, waiting hours). */
  readonly lately: { readonly hours: number; readonly days: number };
}

/** What happened to a fluid, oldest first. `runHours` is the weighted running time (under way + atAnchor x lying) since the log began. */
export type FluidEvent = { readonly entry: string; readonly at: number; readonly runHours: number } & (
  | {
      readonly kind: 'reading';
      readonly levelL: number;
      /** `below`: under the stick's end at levelL; `above`: over it; `on`: levelL as read. */
      readonly off: 'on' | 'below' | 'above';
      readonly how: string | null;
      readonly rough: boolean;
      /** Read after topping up at the same moment, or taken to be full after a change. */
      readonly after: 'topup' | 'change' | null;
    }
  | { readonly kind: 'topup'; readonly amountL: number }
  | { readonly kind: 'change' }
  | { readonly kind: 'job'; readonly text: string }
  | {
      readonly kind: 'leak';
      readonly class: LeakClass;
      readonly dropsPerMinute: number | null;
    }
);

export type LeakClass = EntryOf<'leak'>['class'];

export interface FluidRecord {
  readonly events: readonly FluidEvent[];
  readonly lookedAt: number | null;
  /** Weighted running hours since the log began, at the condition's moment. */
  readonly runHours: number;
}

/** One anode's life in its place. `share` 1 is new; `sd` by the way it was measured (model 4). */
export interface Fitting {
  readonly fittedAt: number | null;
  readonly looks: readonly {
    readonly at: number;
    readonly share: number;
    readonly sd: number;
    readonly flakes: boolean;
  }[];
}

export interface AnodeRecord {
  /** Oldest first; the last is fitted now. Empty: never seen. */
  readonly fittings: readonly Fitting[];
  readonly lookedAt: number | null;
}

export interface SpareRecord {
  /** Null: not entered yet. */
  readonly count: number | null;
  /** Unplanned uses: one `use` entry is one event. `engineHours` null where the spare has no engine. */
  readonly uses: readonly {
    readonly at: number;
    readonly count: number;
    readonly engineHours: number | null;
  }[];
  /** Count after each entry, for the chart. */
  readonly history: readonly { readonly at: number; readonly count: number }[];
  /** What the uses were seen over since this spare's first entry: engine hours, or days. */
  readonly exposure: number;
  readonly lookedAt: number | null;
}

export interface ServiceRecord {
  /** The last time done; `hours` the engine's continuous hours then, null without an engine. */
  readonly done: readonly { readonly at: number; readonly hours: number | null }[];
}

export interface CheckRecord {
  readonly answers: readonly {
    readonly at: number;
    readonly ok: boolean | null;
    readonly value: number | null;
  }[];
  /** Work since the last answer that touched it, and so voids it (model 7). */
  readonly unsettledBy: { readonly item: string; readonly at: number } | null;
  /** For `leaving` checks: made since she last arrived. */
  readonly madeSinceArrival: boolean;
  readonly lookedAt: number | null;
}

export interface DatedRecord {
  /** The last day it is good for, UTC; null: not entered yet. */
  readonly expires: string | null;
  readonly lookedAt: number | null;
}
