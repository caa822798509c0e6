import type { ClosedHunt, Found, Noticed } from '../tracing/closed-hunts.ts';
import { instant, six } from './figures.ts';
import {
  causeDocument,
  clueDocument,
  type JobDocument,
  jobDocument,
  saysOf,
  type TraceDocument,
} from './trace-document.ts';

/** A hunt that work has closed, as `item --json` lists it. `helped`: how sure it is that the work helped, 0..1. */
export interface FoundDocument extends JobDocument {
  table: { id: string; title: string };
  name: string;
}

/** A closed hunt in full, as `trace found=... --json` gives it: what was known just before the work, and what came after. */
export interface ClosedHuntDocument extends FoundDocument {
  noticed: { at: string; sign: Noticed['sign']; says: string } | null;
  state: TraceDocument['state'];
  causes: TraceDocument['causes'];
  somethingElse: number;
  clues: TraceDocument['clues'];
  /** Work for other causes before, that did not close it. */
  tries: (JobDocument & { name: string })[];
  after: {
    by: 'person' | 'check' | 'readings';
    at: string;
    /** By readings: how many, and the loss after against before. */
    readings: number | null;
    ratio: { p10: number; p50: number; p90: number } | null;
  } | null;
  /** The chance that it was the cause the work was for, what came after counted in. */
  sure: number;
  closedAt: string;
}

export function foundDocument({ table, job }: Found): FoundDocument {
  return {
    ...jobDocument(job),
    table: { id: table.id, title: table.title },
    name: nameOf(table, job.cause),
  };
}

export function closedHuntDocument(hunt: ClosedHunt): ClosedHuntDocument {
  const { table, stood, job, noticed, sure, closedAt } = hunt;
  return {
    ...foundDocument(hunt),
    noticed: noticed && { at: instant(noticed.at), sign: noticed.sign, says: noticedWords(noticed) },
    state: stood.state,
    causes: stood.causes.map(causeDocument),
    somethingElse: six(stood.elseChance),
    clues: stood.clues.map(clueDocument),
    tries: stood.jobs.map((tried) => ({ ...jobDocument(tried), name: nameOf(table, tried.cause) })),
    after: job.told && afterOf(job.told),
    sure: six(sure),
    closedAt: instant(closedAt),
  };
}

function afterOf(told: NonNullable<Found['job']['told']>): ClosedHuntDocument['after'] {
  const { by, at } = told;
  if (told.by !== 'readings') return { by, at: instant(at), readings: null, ratio: null };
  const { p10, p50, p90 } = told.ratio;
  return {
    by,
    at: instant(at),
    readings: told.count,
    ratio: { p10: six(p10), p50: six(p50), p90: six(p90) },
  };
}

function noticedWords(noticed: Noticed): string {
  switch (noticed.sign) {
    case 'leak':
      return `a leak: ${LEAKS[noticed.class]}`;
    case 'changed':
      return 'its loss changed by itself';
    case 'pumps more':
      return 'the pump cut in more often';
    case 'not as it should be':
      return 'it was not as it should be';
    case 'clue':
      return saysOf(noticed.clue, noticed.seen);
  }
}

const LEAKS = {
  dry: 'dry',
  wet: 'wet to the touch, no drop forms',
  drops: 'drops form',
  falls: 'drops fall',
};

function nameOf({ causes }: Found['table'], id: string): string {
  return causes.find((cause) => cause.id === id)?.name ?? id;
}
