import type { Boat } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Condition, FluidEvent } from '../condition/condition.ts';
import type { Beliefs, JobEffect } from '../inference/belief.ts';
import { believeFluid } from '../inference/fluid.ts';
import type { Table } from './table.ts';

/** Work done for a cause, and the chance that it helped. Instants are ms. */
export interface JobDone {
  /** The id of its entry. */
  readonly entry: string;
  readonly at: number;
  readonly text: string;
  readonly cause: string;
  readonly helped: number;
  /** What says so; null where nothing does yet. */
  readonly told: Told | null;
  /** What came before the next work on the thing counts, or all so far: until then. */
  readonly until: number;
}

/** What tells whether work helped: a person by the clue `helped`, else the check's next answer, else the readings of its level since. `at` is when it was told, by the last of the readings. */
export type Told = { readonly at: number; readonly chance: number } & (
  | { readonly by: 'person' | 'check' }
  | { readonly by: 'readings'; readonly count: number; readonly ratio: JobEffect['ratio'] }
);

/** The clue a person answers once work was done: is it cured? */
export const HELPED = 'helped';
/** An answer given by a person, or by a check, is right so often. Judgement. */
const ANSWERED = 0.95;
/** Nothing is known yet. */
const OPEN = 0.5;

/** Every job on a thing that names a cause of the table, oldest first, each judged by what came before the next work. */
export function jobsDone(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  id: string,
  { causes }: Table,
): readonly JobDone[] {
  const all = condition.jobs.filter(({ item }) => item === id);
  return all.flatMap(({ id: entry, at: when, text, cause }, i) => {
    if (cause === undefined || !causes.some((one) => one.id === cause)) return [];
    const next = all[i + 1];
    const at = Date.parse(when);
    const until = next === undefined ? condition.at : Date.parse(next.at) - 1;
    const told =
      byPerson(condition, id, at, until) ??
      byCheck(condition, id, at, until) ??
      byReadings(boat, condition, beliefs, id, at, until);
    return [{ entry, at, text, cause, helped: told?.chance ?? OPEN, told, until }];
  });
}

function byPerson({ clues }: Condition, id: string, from: number, to: number): Told | null {
  const said = clues.findLast(
    ({ item, clue, at, seen }) =>
      item === id && clue === HELPED && seen !== undefined && Date.parse(at) >= from && Date.parse(at) <= to,
  );
  return said ? { by: 'person', at: Date.parse(said.at), chance: said.seen ? ANSWERED : 1 - ANSWERED } : null;
}

function byCheck({ checks }: Condition, id: string, from: number, to: number): Told | null {
  const next = checks.get(id)?.answers.find(({ at, ok }) => ok !== null && at > from && at <= to);
  return next ? { by: 'check', at: next.at, chance: next.ok ? ANSWERED : 1 - ANSWERED } : null;
}

/** By the loss since work at `at`, as the readings up to `until` tell it; null before the first of them. */
export function byReadings(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  id: string,
  at: number,
  until: number,
): Told | null {
  const fluid = boat.fluids.find((one) => one.id === id);
  if (!fluid) return null;
  const events = condition.fluids.get(id)!.events.filter((event) => event.at <= until);
  const readings = events.filter((event) => event.kind === 'reading' && event.at > at);
  const last = readings.at(-1);
  if (!last) return null;
  const job = (
    until === condition.at
      ? beliefs.fluids.get(id)
      : believedThen(fluid, events, until, { boat, condition, beliefs })
  )?.job;
  if (job?.at !== at) return null;
  return { by: 'readings', at: last.at, chance: job.lowerChance, count: readings.length, ratio: job.ratio };
}

function believedThen(
  fluid: Fluid,
  events: readonly FluidEvent[],
  at: number,
  {
    boat,
    condition,
    beliefs,
  }: { readonly boat: Boat; readonly condition: Condition; readonly beliefs: Beliefs },
) {
  const { runHours } = events.at(-1)!;
  const lookedAt = events.findLast(({ kind }) => kind === 'reading')?.at ?? null;
  const then = { ...condition, at, fluids: new Map([[fluid.id, { events, runHours, lookedAt }]]) };
  return believeFluid(fluid, boat.engines, then, beliefs.waiting);
}
