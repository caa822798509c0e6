import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs, FluidBelief } from '../inference/belief.ts';
import type { Turns } from '../maths/turns.ts';
import { byReadings, type JobDone, jobsDone } from './jobs-done.ts';
import { pumpRate } from './pump.ts';
import type { Clue, Table } from './table.ts';
import { CLOSED, type Trace, traceOf } from './trace.ts';

/** Work that closed a hunt, and the table it was hunted by. */
export interface Found {
  readonly table: Table;
  readonly job: JobDone;
}

/** A closed hunt in full. Instants are ms. */
export interface ClosedHunt extends Found {
  /** What was noted first; null where nothing was before the work. */
  readonly noticed: Noticed | null;
  /** The hunt as it stood just before the work that closed it. */
  readonly stood: Trace;
  /** The chance that it was the cause the work was for, what came after counted in. */
  readonly sure: number;
  /** When it was 9 in 10 that the work helped. */
  readonly closedAt: number;
}

export type Noticed = { readonly at: number } & (
  | { readonly sign: 'leak'; readonly class: NonNullable<FluidBelief['leakClass']> }
  | { readonly sign: 'changed' | 'pumps more' | 'not as it should be' }
  | { readonly sign: 'clue'; readonly clue: Clue; readonly seen: boolean | null }
);

/** What is known of her at a moment. */
export interface Known {
  readonly boat: Boat;
  readonly condition: Condition;
  readonly beliefs: Beliefs;
}

/** Every hunt for what ails a thing that work has closed, by any of the tables, the newest first. */
export function foundBefore(
  { boat, condition, beliefs }: Known,
  id: string,
  tables: readonly Table[],
): readonly Found[] {
  return tables
    .flatMap((table) =>
      jobsDone(boat, condition, beliefs, id, table)
        .filter(({ helped }) => helped >= CLOSED)
        .map((job) => ({ table, job })),
    )
    .sort((a, b) => b.job.at - a.job.at);
}

/** A closed hunt in full; `before` gives what was known when an entry was made, from all before it. */
export function* closedHunt(
  known: Known,
  id: string,
  { table, job }: Found,
  before: (entry: string) => Turns<Pick<Known, 'condition' | 'beliefs'>>,
): Turns<ClosedHunt> {
  const then = { boat: known.boat, ...(yield* before(job.entry)) };
  const stood = traceOf(then, id, table);
  yield;
  const since = stood.before.at(-1)?.at ?? Number.NEGATIVE_INFINITY;
  return {
    table,
    job,
    noticed: noticed(then, id, stood, since),
    stood,
    sure: stood.afterWork(job.cause, job.helped).get(job.cause)!,
    closedAt: yield* closedAt(known, id, job),
  };
}

function noticed({ condition, beliefs }: Known, id: string, stood: Trace, since: number): Noticed | null {
  const signs: Noticed[] = stood.clues
    .filter(({ from }) => from === 'asked')
    .map(({ clue, seen, at }) => ({ at, sign: 'clue', clue, seen }));
  const leaks = (condition.fluids.get(id)?.events ?? []).flatMap((event) =>
    event.kind === 'leak' && event.at > since ? [event] : [],
  );
  const first = leaks.slice(1 + leaks.findLastIndex((leak) => leak.class === 'dry'))[0];
  if (first) signs.push({ at: first.at, sign: 'leak', class: first.class });
  const changedAt = beliefs.fluids.get(id)?.changedAt ?? null;
  if (changedAt !== null && changedAt > since) signs.push({ at: changedAt, sign: 'changed' });
  const check = condition.checks.get(id);
  const answers = check?.answers.filter(({ ok, at }) => ok !== null && at > since) ?? [];
  const wrong = answers.slice(1 + answers.findLastIndex(({ ok }) => ok))[0];
  if (wrong) signs.push({ at: wrong.at, sign: 'not as it should be' });
  const rate = check ? pumpRate(check) : null;
  if (rate?.before && rate.perDay > rate.before.perDay && rate.since > since)
    signs.push({ at: rate.since, sign: 'pumps more' });
  return signs.toSorted((a, b) => a.at - b.at)[0] ?? null;
}

/** By the readings: one with which it came to be 9 in 10, where by the one before it was not, found by halving. */
function* closedAt(
  { boat, condition, beliefs }: Known,
  id: string,
  { at, told, until }: JobDone,
): Turns<number> {
  if (told?.by !== 'readings') return told?.at ?? at;
  const readings = condition.fluids
    .get(id)!
    .events.filter((event) => event.kind === 'reading' && event.at > at && event.at <= until);
  let [open, closed] = [-1, readings.length - 1];
  while (closed - open > 1) {
    const middle = Math.floor((open + closed) / 2);
    const so = byReadings(boat, condition, beliefs, id, at, readings[middle]!.at);
    if ((so?.chance ?? 0) >= CLOSED) closed = middle;
    else open = middle;
    yield;
  }
  return readings[closed]!.at;
}
