import type { Consequence } from '../boat/boat.ts';
import type { LeakClass } from '../condition/condition.ts';
import type { AnodeBelief, FluidBelief, Spread } from '../inference/belief.ts';
import type { Trouble } from '../trouble.ts';
import type { Hindrance } from './hindrances.ts';
import type { Sky } from './sky.ts';
import type { ForecastAge } from './weather-bars.ts';
import type { WeatherShown } from './weather-shown.ts';

/**
 * The readiness model's whole answer, as facts. `words/document.ts` makes the `verdict --json` document of it,
 * and every screen draws that document, so that no figure is computed twice.
 * Scores are percentages, chances 0..1, instants ms since 1970 UTC.
 */
export interface Answer {
  readonly at: number;
  /** The passage planned: `nm` along its legs as sailed, `hours` at its usual speed; under way, what is left of it at that speed, else null. */
  readonly passage: {
    readonly id: string;
    readonly name: string;
    readonly nm: number;
    readonly hours: number;
    readonly toGo: { readonly nm: number; readonly hours: number } | null;
  } | null;
  readonly forecast: {
    readonly issuedAt: number;
    readonly ageHours: number;
    readonly source: string;
    readonly age: ForecastAge;
    readonly name: string;
    readonly issuer: string;
    /** It counts because the skipper said so. */
    readonly chosen: boolean;
  } | null;
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly threshold: { readonly boat: number; readonly go: number };
  readonly score: {
    readonly now: number | null;
    readonly boat: number;
    readonly weather: number | null;
    readonly error: number;
  };
  readonly onTheLine: OnTheLine;
  readonly windows: readonly Window[];
  readonly weatherAlone: {
    readonly at: number;
    readonly until: number;
    readonly startWorkBy: number | null;
  } | null;
  readonly best: { readonly at: number; readonly score: number } | null;
  readonly endurance: { readonly until: number; readonly item: string } | null;
  readonly staying: { readonly until: number; readonly why: StayingWhy } | null;
  readonly shelter: readonly {
    readonly passage: string;
    readonly verdict: Verdict;
    readonly score: number | null;
  }[];
  /** One a whole hour from now. */
  readonly curve: readonly {
    readonly at: number;
    readonly score: number | null;
    readonly boat: number;
    readonly weather: number | null;
  }[];
  readonly items: readonly ItemAnswer[];
  readonly toGetReady: readonly Action[];
  /** False where no list of actions known here brings the boat to its threshold. */
  readonly toGetReadySuffices: boolean;
  readonly whileHeld: readonly Action[];
  readonly beforeLeaving: readonly {
    readonly check: string;
    readonly made: boolean;
    readonly minutes: number;
  }[];
  readonly trouble: readonly Trouble[];
  readonly simulations: number;
  readonly seed: number;
  /** Over the hours of the curve; null where no place is known. */
  readonly sky: Sky | null;
  /** Null without a forecast for the passage. */
  readonly weather: WeatherShown | null;
}

/** Which threshold a score is within 2 standard errors of even with the most passages; null for neither. */
export type OnTheLine = 'boat' | 'go' | null;

export type Verdict = 'go' | 'hold' | 'not ready';
export type State = 'fit' | 'watch' | 'unfit' | 'unseen';
export type ItemKind = 'fluid' | 'anode' | 'spare' | 'service' | 'check' | 'dated';

/** Departures good enough in a row. `opens` and `closes` name what stands in the way before and after; null at the forecast's end. */
export interface Window {
  readonly at: number;
  readonly until: number;
  readonly score: number;
  readonly opens: Edge | null;
  readonly closes: Edge | null;
}

/** What stands in the way at the edge of a window: weather on a leg (`place` as the leg is called, `limit` the skipper's figure for it), or a vital item. */
export type Edge =
  | { readonly hindrance: Hindrance; readonly place: string | null; readonly limit: number | null }
  | { readonly item: string };

/** Why an anchorage is no place to stay: `dir` where the wind comes from, degrees true, NaN where it is not said. */
export interface StayingWhy {
  readonly anchorage: string;
  readonly what: 'wind' | 'seas';
  readonly dir: number;
}

export type ItemAnswer = ItemFacts &
  (
    | ({ readonly kind: 'fluid'; readonly belief: FluidBelief | null } & {
        readonly [K in keyof FluidFigures]: FluidFigures[K] | null;
      })
    | { readonly kind: 'anode'; readonly belief: AnodeBelief | null }
    | {
        readonly kind: 'spare';
        readonly count: number | null;
        readonly rate: {
          readonly mean: number;
          readonly sd: number;
          readonly per: 'engine hour' | 'day';
        } | null;
        readonly shortChance: number | null;
        readonly cover95: number | null;
        readonly buy: number;
      }
    | {
        readonly kind: 'service';
        readonly dueHours: number | null;
        readonly dueOn: number | null;
        readonly dueInHours: number | null;
      }
    | {
        readonly kind: 'check';
        readonly ok: boolean | null;
        readonly leaving: boolean;
        readonly unsettled: boolean;
      }
    | { readonly kind: 'dated'; readonly expires: string | null }
  );

/** What is to come of a fluid, leaving now. */
export interface FluidFigures {
  readonly lookAgain: { readonly engineHours: number } | { readonly days: number } | null;
  /** Level at the end of the stretch, L. */
  readonly endL: Spread;
  /** When the stretch ends on average. */
  readonly endsAt: number;
  /** Days, of the usual ones, that what is in it lasts in 9 of 10, and with its stock; null without one. */
  readonly lasts: { readonly days: number | 'beyond'; readonly withStores: number | 'beyond' | null };
}

export interface ItemFacts {
  readonly id: string;
  readonly name: string;
  readonly consequence: Consequence;
  readonly state: State;
  /** Share of the simulated passages, leaving now, in which it holds by what is known of it; 1 where nothing is simulated. */
  readonly chance: number;
  readonly goodUntil: number | 'beyond' | null;
  readonly now: { readonly value: number; readonly sd: number; readonly unit: string } | null;
  readonly lookedAt: number | null;
  /** Why it is not plainly fit, worst first; empty for a fit item. */
  readonly why: readonly Why[];
}

/** Facts behind an item's state. Amounts carry their unit. */
export type Why =
  | { why: 'past limit'; value: number; limit: number; unit: string }
  | { why: 'may fail'; chance: number; threshold: number }
  | {
      why: 'wrong answer';
      value: number | null;
      unit: string | null;
      atLeast: number | null;
      atMost: number | null;
    }
  | {
      why: 'drifts';
      at: number;
      way: 'up' | 'down';
      before: number;
      after: number;
      unit: string | null;
    }
  | { why: 'never looked at' }
  | { why: 'looked at long ago'; days: number; everyDays: number }
  | { why: 'unsettled'; by: string; at: number }
  | { why: 'before leaving' }
  | { why: 'changed'; at: number }
  | { why: 'rising'; chance: number }
  | { why: 'leak'; class: Exclude<LeakClass, 'dry'> }
  | { why: 'fuel leak' }
  | { why: 'over full' }
  | { why: 'expired'; expires: string }
  | { why: 'expires soon'; expires: string; days: number }
  | { why: 'overdue'; hours: number | null; days: number | null }
  | { why: 'parts not aboard'; spare: string; wants: number; aboard: number | null }
  | { why: 'never done' }
  | { why: 'below wanted'; count: number; wanted: number }
  | { why: 'not counted' }
  | { why: 'not entered' }
  | { why: 'used twice'; hours: number }
  | { why: 'wears fast'; chance: number }
  | { why: 'no wear'; days: number }
  | { why: 'wrong alloy'; metal: string; water: string }
  | { why: 'flakes' }
  | { why: 'no one thing'; boat: number };

/** Why the verdict is what it is, worst first. */
export type Reason =
  | { reason: 'item'; item: string; state: State }
  | { reason: 'nothing vital' }
  | { reason: 'nothing entered' }
  | { reason: 'boat short'; boat: number; threshold: number }
  | { reason: 'on the line'; which: 'boat' | 'go'; score: number; threshold: number }
  | { reason: 'no passage' }
  | { reason: 'no forecast' }
  | { reason: 'forecast old'; hours: number }
  | { reason: 'forecast too old'; hours: number }
  | { reason: 'forecast over' }
  | { reason: 'forecast elsewhere'; places: readonly string[] }
  | { reason: 'warning to mind'; text: string }
  | { reason: 'period not said' }
  | { reason: 'beyond forecast'; hours: number }
  | { reason: 'no weather limits'; missing: ('wind' | 'seas')[] }
  | { reason: 'no window' }
  | { reason: 'waits for window'; window: Window }
  | { reason: 'weather now'; what: 'wind' | 'gust' | 'seas'; value: number; limit: number; at: number }
  | { reason: 'squalls now'; at: number }
  | { reason: 'not as forecast'; what: 'wind' | 'gust' | 'seas'; value: number; said: number; at: number }
  | { reason: 'pressure falls'; hPa: number }
  | { reason: 'under the score'; score: number; threshold: number; edge: Edge | null }
  | { reason: 'go'; score: number }
  | { reason: 'log damaged'; count: number }
  | { reason: 'fit' };

/** Something to do, with what it takes. `boatScoreAfter`: with this and all before it done. */
export interface Action {
  readonly do:
    | 'top up'
    | 'refill'
    | 'renew'
    | 'service'
    | 'look'
    | 'put right'
    | 'buy'
    | 'replace'
    | 'stop the leak';
  readonly item: string;
  readonly takes: readonly { readonly spare: string; readonly count: number }[];
  /** How much of it is bought, in its unit; null where nothing is. */
  readonly buys: number | null;
  readonly minutes: number;
  readonly boatScoreAfter: number;
}
