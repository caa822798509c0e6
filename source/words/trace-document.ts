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
  /** How often two of the causes stand at once: their chances then make more than 1. */
  together: number;
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
  /** Times a day; 8 chances in 10 between p10 and p90. `beforeRange` where `before` is given: p10 and p90 of that. */
  pump: {
    perDay: number;
    p10: number;
    p90: number;
    since: string;
    before: number | null;
    beforeRange: [number, number] | null;
  } | null;
  /** `risesLPerMinute`: what the pump leaves of it; null where no pump was named. */
  flooding: {
    inflowLPerMinute: number;
    pumpedLPerMinute: number | null;
    keepsUp: boolean | null;
    risesLPerMinute: number | null;
  } | null;
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

export interface JobDocument {
  at: string;
  text: string;
  cause: string;
  helped: number;
}

/** What comes in by an opening, and what a pump takes out, litres a minute; `pumped` null where no pump was named. */
export interface Flooding {
  readonly inflow: number;
  readonly pumped: number | null;
}

/** What would reach a pump that works by itself as oil. */
const OILY: readonly Trace['table']['liquid'][] = ['oil', 'fuel', 'bilge'];

export const SOMETHING_ELSE = 'something-else';

export function traceDocument(given: {
  readonly boat: string;
  readonly at: number;
  readonly item: TraceDocument['item'];
  readonly trace: Trace;
  readonly live: LiveWith | null;
  readonly pump: PumpRate | null;
  readonly flooding: Flooding | null;
  readonly trouble: readonly string[];
}): TraceDocument {
  const { trace, live, pump } = given;
  const looks = trace.looks.map(lookOf);
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
    warnings: OILY.includes(trace.table.liquid) ? [OILY_BILGE] : [],
    causes: trace.causes.map(causeDocument),
    somethingElse: six(trace.elseChance),
    together: six(trace.table.together),
    clues: trace.clues.map(clueDocument),
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
    jobs: trace.jobs.map(jobDocument),
    before: trace.before.map(jobDocument),
    pump: pump && pumpOf(pump),
    flooding: given.flooding && floodingOf(given.flooding),
    unknownClues: [...trace.unknown],
    trouble: [...given.trouble],
  };
}

export function jobDocument({ at, text, cause, helped }: Trace['jobs'][number]): JobDocument {
  return { at: instant(at), text, cause, helped: six(helped) };
}

export function causeDocument({ cause, chance, prior, speaksFor, against }: Trace['causes'][number]) {
  return {
    id: cause.id,
    name: cause.name,
    chance: six(chance),
    prior: six(prior),
    speaksFor: speaksFor.map(({ id }) => id),
    against: against.map(({ id }) => id),
  };
}

export function clueDocument({ clue, seen, from, at }: Trace['clues'][number]) {
  return { id: clue.id, says: saysOf(clue, seen), seen, from, at: instant(at) };
}

function pumpOf({ perDay, p10, p90, since, before }: PumpRate): NonNullable<TraceDocument['pump']> {
  return {
    perDay: six(perDay),
    p10: six(p10),
    p90: six(p90),
    since: instant(since),
    before: before && six(before.perDay),
    beforeRange: before && [six(before.p10), six(before.p90)],
  };
}

function floodingOf({ inflow, pumped }: Flooding): NonNullable<TraceDocument['flooding']> {
  return {
    inflowLPerMinute: six(inflow),
    pumpedLPerMinute: sixOrNull(pumped),
    keepsUp: pumped === null ? null : pumped >= inflow,
    risesLPerMinute: pumped === null ? null : six(Math.max(0, inflow - pumped)),
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

export function saysOf(clue: Clue, seen: boolean | null): string {
  return seen === null ? `could not be told: ${clue.ask}` : seen ? clue.seen : clue.notSeen;
}
