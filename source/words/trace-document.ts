import type { LiveWith } from '../tracing/live-with.ts';
import type { PumpRate } from '../tracing/pump.ts';
import type { Caution, Clue } from '../tracing/table.ts';
import type { Trace } from '../tracing/trace.ts';
import { instant, six, sixOrNull } from './figures.ts';
import { cautionWords, OILY_BILGE } from './trace-cautions.ts';

/** The document of `trace --json`. Chances 0..1, 6 significant digits; instants ISO 8601 UTC. */
export interface TraceDocument {
  format: 1;
  boat: string;
  at: string;
  item: { id: string; kind: string; name: string };
  table: { id: string; title: string };
  state: Trace['state'];
  liveWith: {
    bars: string[];
    class: LiveWith['leakClass'];
    lostADayL: number | null;
    aboardL: number | null;
    lastsDays: number | null;
  } | null;
  warnings: string[];
  causes: {
    id: string;
    name: string;
    chance: number;
    prior: number;
    speaksFor: string[];
    against: string[];
  }[];
  somethingElse: number;
  clues: { id: string; says: string; seen: boolean | null; from: 'log' | 'asked'; at: string }[];
  next: LookDocument | null;
  looks: LookDocument[];
  repairs: {
    cause: string;
    do: string;
    chance: number;
    minutes: number;
    parts: string | null;
    atAnchor: boolean;
    cost: number;
  }[];
  jobs: JobDocument[];
  before: JobDocument[];
  pump: { perDay: number; since: string; before: number | null } | null;
  flooding: { inflowLPerMinute: number; pumpedLPerMinute: number | null; keepsUp: boolean | null } | null;
  unknownClues: string[];
  trouble: string[];
}

interface LookDocument {
  clue: string;
  ask: string;
  minutes: number;
  nuisance: number;
  bits: number;
  bitsPerMinute: number;
  ifSeen: { cause: string; chance: number };
  ifNot: { cause: string; chance: number };
  cautions: string[];
}

interface JobDocument {
  at: string;
  text: string;
  cause: string;
  helped: number;
}

export const SOMETHING_ELSE = 'something-else';

export function traceDocument(given: {
  readonly boat: string;
  readonly at: number;
  readonly item: TraceDocument['item'];
  readonly trace: Trace;
  readonly live: LiveWith | null;
  readonly pump: PumpRate | null;
  readonly flooding: { readonly inflow: number; readonly pumped: number | null } | null;
  readonly trouble: readonly string[];
}): TraceDocument {
  const { trace, live, pump } = given;
  const looks = trace.looks.map(lookOf);
  const job = ({ at, text, cause, helped }: Trace['jobs'][number]): JobDocument => ({
    at: instant(at),
    text,
    cause,
    helped: six(helped),
  });
  return {
    format: 1,
    boat: given.boat,
    at: instant(given.at),
    item: given.item,
    table: { id: trace.table.id, title: trace.table.title },
    state: trace.state,
    liveWith: live && {
      bars: [...live.bars],
      class: live.leakClass,
      lostADayL: sixOrNull(live.lostADayL),
      aboardL: sixOrNull(live.aboardL),
      lastsDays: sixOrNull(live.lastsDays),
    },
    warnings: trace.table.liquid === undefined ? [] : [OILY_BILGE],
    causes: trace.causes.map(({ cause, chance, prior, speaksFor, against }) => ({
      id: cause.id,
      name: cause.name,
      chance: six(chance),
      prior: six(prior),
      speaksFor: speaksFor.map(({ id }) => id),
      against: against.map(({ id }) => id),
    })),
    somethingElse: six(trace.elseChance),
    clues: trace.clues.map(({ clue, seen, from, at }) => ({
      id: clue.id,
      says: saysOf(clue, seen),
      seen,
      from,
      at: instant(at),
    })),
    next: looks[0] ?? null,
    looks,
    repairs: trace.repairs.map(({ cause, chance, cost }) => ({
      cause: cause.id,
      do: cause.repair,
      chance: six(chance),
      minutes: cause.minutes,
      parts: cause.parts ?? null,
      atAnchor: cause.atAnchor,
      cost: six(cost),
    })),
    jobs: trace.jobs.map(job),
    before: trace.before.map(job),
    pump: pump && { perDay: six(pump.perDay), since: instant(pump.since), before: sixOrNull(pump.before) },
    flooding: given.flooding && {
      inflowLPerMinute: six(given.flooding.inflow),
      pumpedLPerMinute: sixOrNull(given.flooding.pumped),
      keepsUp: given.flooding.pumped === null ? null : given.flooding.pumped >= given.flooding.inflow,
    },
    unknownClues: [...trace.unknown],
    trouble: [...given.trouble],
  };
}

function lookOf({ clue, bits, bitsPerMinute, ifSeen, ifNot }: Trace['looks'][number]): LookDocument {
  const likeliest = ({ cause, chance }: typeof ifSeen) => ({
    cause: cause?.id ?? SOMETHING_ELSE,
    chance: six(chance),
  });
  return {
    clue: clue.id,
    ask: clue.ask,
    minutes: clue.minutes,
    nuisance: clue.nuisance,
    bits: six(bits),
    bitsPerMinute: six(bitsPerMinute),
    ifSeen: likeliest(ifSeen),
    ifNot: likeliest(ifNot),
    cautions: clue.cautions.map((caution: Caution) => cautionWords(caution)),
  };
}

function saysOf(clue: Clue, seen: boolean | null): string {
  return seen === null ? `could not be told: ${clue.ask}` : seen ? clue.seen : clue.notSeen;
}
