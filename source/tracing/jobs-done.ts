import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { believeFluid } from '../inference/fluid.ts';
import type { Table } from './table.ts';

/** Work done for a cause, and the chance that it helped: by the readings since, the next answer of the check, or by the clue `helped`. */
export interface JobDone {
  readonly at: number;
  readonly text: string;
  readonly cause: string;
  readonly helped: number;
}

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
  return all.flatMap(({ at: when, text, cause }, i) => {
    if (cause === undefined || !causes.some((one) => one.id === cause)) return [];
    const next = all[i + 1];
    const at = Date.parse(when);
    const until = next === undefined ? condition.at : Date.parse(next.at) - 1;
    const helped =
      byPerson(condition, id, at, until) ??
      byCheck(condition, id, at, until) ??
      byReadings(boat, condition, beliefs, id, at, next === undefined ? null : until);
    return [{ at, text, cause, helped: helped ?? OPEN }];
  });
}

function byPerson({ clues }: Condition, id: string, from: number, to: number): number | null {
  const said = clues.findLast(
    ({ item, clue, at, seen }) =>
      item === id && clue === HELPED && seen !== undefined && Date.parse(at) >= from && Date.parse(at) <= to,
  );
  return said ? (said.seen ? ANSWERED : 1 - ANSWERED) : null;
}

function byCheck({ checks }: Condition, id: string, from: number, to: number): number | null {
  const next = checks.get(id)?.answers.find(({ at, ok }) => ok !== null && at > from && at <= to);
  return next ? (next.ok ? ANSWERED : 1 - ANSWERED) : null;
}

/** By the loss since; as it stood just before the next work, where there was any. */
function byReadings(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  id: string,
  at: number,
  until: number | null,
): number | null {
  const fluid = boat.fluids.find((one) => one.id === id);
  if (!fluid) return null;
  if (until === null) {
    const job = beliefs.fluids.get(id)?.job;
    return job?.at === at ? job.lowerChance : null;
  }
  const events = condition.fluids.get(id)!.events.filter((event) => event.at <= until);
  const runHours = events.at(-1)?.runHours ?? 0;
  const lookedAt = events.findLast(({ kind }) => kind === 'reading')?.at ?? null;
  const then = { ...condition, at: until, fluids: new Map([[id, { events, runHours, lookedAt }]]) };
  const job = believeFluid(fluid, boat.engines, then, beliefs.waiting)?.job;
  return job?.at === at ? job.lowerChance : null;
}
