import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { type Chances, updated } from './beliefs.ts';
import {
  causeChances,
  elseChance,
  type Hunt,
  huntOf,
  type Look,
  looksLeft,
  repairCost,
  STANDS,
} from './hunt.ts';
import { HELPED, type JobDone, jobsDone } from './jobs-done.ts';
import { logClues } from './log-clues.ts';
import { repairOrder } from './repair-order.ts';
import type { Cause, Clue, Table } from './table.ts';

/** A hunt as it stands: what was found, what it makes of each cause, what to look at next, in what order to repair. Instants are ms. */
export interface Trace {
  readonly table: Table;
  readonly causes: readonly TracedCause[];
  readonly elseChance: number;
  /** `stands`: one cause has 9 chances in 10; `spent`: no look is left that could change what to do. */
  readonly state: 'hunting' | 'stands' | 'spent' | 'something else';
  readonly clues: readonly TracedClue[];
  /** The looks left that could change what is done, the best first. */
  readonly looks: readonly (Look & { readonly ifSeen: Likeliest; readonly ifNot: Likeliest })[];
  /** In the order to try them. */
  readonly repairs: readonly { readonly cause: Cause; readonly chance: number; readonly cost: number }[];
  /** Work for a cause in this hunt; none of it has closed it yet. */
  readonly jobs: readonly JobDone[];
  /** Hunts that a job has closed, oldest first. */
  readonly before: readonly JobDone[];
  /** Clues in the log that the table does not know: left out. */
  readonly unknown: readonly string[];
  /** The chance that each cause would have, were it known that work for one of them had helped so surely. */
  afterWork(cause: string, helped: number): ReadonlyMap<string, number>;
}

interface TracedCause {
  readonly cause: Cause;
  readonly chance: number;
  /** Its chance before any clue of this hunt, found causes of this boat counted in. */
  readonly prior: number;
  readonly speaksFor: readonly Clue[];
  readonly against: readonly Clue[];
}

interface TracedClue {
  readonly clue: Clue;
  /** Null: it was looked for and could not be told. */
  readonly seen: boolean | null;
  readonly from: 'log' | 'asked';
  readonly at: number;
}

/** The likeliest after an answer; null for something else. */
interface Likeliest {
  readonly cause: Cause | null;
  readonly chance: number;
}

/** A job that went for its own cause helps so often, one for another cause so often seems to. Judgement. */
const HELPS = 0.9;
const SEEMS_TO_HELP = 0.1;
/** From here on work has closed a hunt. */
export const CLOSED = 0.9;
/** A clue speaks for a cause that shows it so many times oftener than the rest do, and the other way round. Judgement. */
const SPEAKS = 1.5;

export function traceOf(
  given: { readonly boat: Boat; readonly condition: Condition; readonly beliefs: Beliefs },
  id: string,
  table: Table,
): Trace {
  const { boat, condition, beliefs: known } = given;
  const done = jobsDone(boat, condition, known, id, table);
  const before = done.filter(({ helped }) => helped >= CLOSED);
  const since = before.at(-1)?.at ?? Number.NEGATIVE_INFINITY;
  const jobs = done.filter(({ at }) => at > since);
  const found = new Map<string, number>();
  for (const { cause, helped } of before) found.set(cause, (found.get(cause) ?? 0) + helped);
  const hunt = huntOf(table, found);
  const { clues, unknown } = cluesOf(given, id, table, since);
  const afterClues = clues.reduce(
    (beliefs, { clue, seen }) => (seen === null ? beliefs : updated(beliefs, hunt.shown.get(clue.id)!, seen)),
    hunt.prior,
  );
  const beliefs = jobs.reduce((so, job) => updated(so, helpChances(hunt, job.cause), job.helped), afterClues);
  const chances = causeChances(hunt, beliefs);
  const priors = causeChances(hunt, hunt.prior);
  const looks = looksLeft(hunt, beliefs, new Set(clues.map(({ clue }) => clue.id)));
  const repairs = table.causes.map((cause, i) => ({ cause, chance: chances[i]!, cost: repairCost(cause) }));
  return {
    table,
    causes: table.causes
      .map((cause, i) => ({ cause, chance: chances[i]!, prior: priors[i]!, ...spoken(hunt, i, clues) }))
      .sort((a, b) => b.chance - a.chance),
    elseChance: elseChance(hunt, beliefs),
    state: stateOf(chances, elseChance(hunt, beliefs), looks),
    clues,
    looks: looks.map((look) => ({ ...look, ...afterwards(hunt, beliefs, look.clue) })),
    repairs: repairOrder(repairs).map((i) => repairs[i]!),
    jobs,
    before,
    unknown,
    afterWork(cause, helped) {
      const after = causeChances(hunt, updated(beliefs, helpChances(hunt, cause), helped));
      return new Map(table.causes.map(({ id: one }, i) => [one, after[i]!]));
    },
  };
}

function stateOf(chances: readonly number[], other: number, looks: readonly Look[]): Trace['state'] {
  if (other >= Math.max(0.5, ...chances)) return 'something else';
  if (Math.max(...chances) >= STANDS) return 'stands';
  return looks.length > 0 ? 'hunting' : 'spent';
}

/** Every clue of this hunt: what a person answered since it began, the newest answer of each, then what the log tells of the rest. */
function cluesOf(
  { boat, condition, beliefs }: Parameters<typeof traceOf>[0],
  id: string,
  table: Table,
  since: number,
) {
  const answered = new Map<string, { readonly seen: boolean | null; readonly at: number }>();
  for (const { item, clue, seen, at } of condition.clues)
    if (item === id && Date.parse(at) > since) answered.set(clue, { seen: seen ?? null, at: Date.parse(at) });
  const facts = logClues(boat, condition, beliefs, id);
  const clues = table.clues.flatMap((clue): TracedClue[] => {
    const answer = answered.get(clue.id);
    if (answer) return [{ clue, ...answer, from: 'asked' }];
    const fact = clue.log === undefined ? undefined : facts.get(clue.log);
    return fact === undefined ? [] : [{ clue, seen: fact, from: 'log', at: condition.at }];
  });
  const ids = new Set([...table.clues.map((clue) => clue.id), HELPED]);
  return { clues, unknown: [...answered.keys()].filter((clue) => !ids.has(clue)) };
}

function helpChances({ hypotheses, table }: Hunt, cause: string): Chances {
  const which = table.causes.findIndex(({ id }) => id === cause);
  return hypotheses.map((standing) => (standing.includes(which) ? HELPS : SEEMS_TO_HELP));
}

/** The clues that speak for a cause and against it, each against what the other hypotheses show. */
function spoken({ hypotheses, prior, shown }: Hunt, cause: number, clues: readonly TracedClue[]) {
  const speaksFor: Clue[] = [];
  const against: Clue[] = [];
  for (const { clue, seen } of clues) {
    if (seen === null) continue;
    const chances = shown.get(clue.id)!.map((chance) => (seen ? chance : 1 - chance));
    const mean = (holds: (standing: readonly number[]) => boolean) => {
      const some = hypotheses.map((standing, h) => (holds(standing) ? prior[h]! : 0));
      const all = some.reduce((sum, one) => sum + one, 0);
      return some.reduce((sum, one, h) => sum + one * chances[h]!, 0) / all;
    };
    const ratio =
      mean((standing) => standing.includes(cause)) / mean((standing) => !standing.includes(cause));
    if (ratio >= SPEAKS) speaksFor.push(clue);
    if (ratio <= 1 / SPEAKS) against.push(clue);
  }
  return { speaksFor, against };
}

function afterwards(hunt: Hunt, beliefs: Chances, { id }: Clue) {
  const likeliest = (seen: boolean): Likeliest => {
    const after = updated(beliefs, hunt.shown.get(id)!, seen);
    const chances = [...causeChances(hunt, after), elseChance(hunt, after)];
    const chance = Math.max(...chances);
    return { cause: hunt.table.causes[chances.indexOf(chance)] ?? null, chance };
  };
  return { ifSeen: likeliest(true), ifNot: likeliest(false) };
}
