import type { ItemKind, State, Verdict } from '../readiness/answer.ts';

/** The document of `verdict --json` (contract: names, units and meanings are relied on by scripts). Instants are ISO 8601 UTC, scores percentages, chances 0..1, 6 significant digits. */
export interface VerdictDocument {
  format: 1;
  boat: string;
  at: string;
  passage: { id: string; name: string; nm: number; hours: number } | null;
  forecast: { issuedAt: string; ageHours: number; source: string } | null;
  verdict: Verdict;
  reasons: string[];
  threshold: { boat: number; go: number };
  score: { now: number | null; boat: number; weather: number | null; error: number };
  windows: { at: string; until: string; score: number; opens: string | null; closes: string | null }[];
  weatherAlone: { at: string; until: string; startWorkBy: string | null } | null;
  best: { at: string; score: number } | null;
  endurance: { until: string; item: string } | null;
  staying: { until: string; why: string } | null;
  shelter: { passage: string; verdict: Verdict; score: number | null }[];
  curve: { at: string; score: number | null; boat: number; weather: number | null }[];
  items: ItemDocument[];
  toGetReady: ActionDocument[];
  whileHeld: ActionDocument[];
  beforeLeaving: { check: string; made: boolean }[];
  trouble: string[];
  engines: { id: string; name: string; hours: number | null; readAt: string | null; perDay: number }[];
  underWaySince: string | null;
  anchorage: { id: string; name: string; since: string | null } | null;
  simulations: number;
  seed: number;
}

export interface SpreadDocument {
  mean: number;
  sd: number;
  p10: number;
  p90: number;
}

export interface ActionDocument {
  do: string;
  item: string;
  takes: { spare: string; count: number }[];
  minutes: number;
  boatScoreAfter: number;
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
    }
  | { kind: 'anode'; wear: { mean: number; sd: number } | null; reachesLimit: { p10: string; p50: string; p90: string } | null; limit: number }
  | { kind: 'spare'; unit: string; count: number | null; rate: { mean: number; sd: number } | null; shortChance: number | null; cover95: number | null; buy: number; locker: string | null }
  | { kind: 'service'; dueHours: number | null; dueOn: string | null; dueInHours: number | null }
  | { kind: 'check'; ok: boolean | null; when: 'stopped' | 'running' | 'leaving' }
  | { kind: 'dated'; expires: string }
);
