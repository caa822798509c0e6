import { type Candidate, minutesOf, workOf } from './actions.ts';
import type { Action } from './answer.ts';
import { allBits, type Bits, keepCommon, sizeOf } from './bits.ts';
import { doable } from './doable.ts';
import type { Requirement } from './requirements.ts';

/** Up to this many candidates every list is tried (4,096 of them); above, greedily (model 6). */
const MOST_TRIED = 12;

export interface Task {
  /** What must hold, and which of its items are vital. */
  readonly vital: readonly { readonly requirement: Requirement; readonly places: readonly number[] }[];
  readonly passages: number;
  /** The departure it is for, whole hours from now. */
  readonly hour: number;
  /** Passages that must end well. */
  readonly enough: number;
  /** What has to be done whatever the score: looks owed, things past their limit. */
  readonly owed: readonly Candidate[];
  readonly candidates: readonly Candidate[];
  /** How much of a spare there is. */
  aboard(spare: string): number;
}

/** The shortest list, then the one with the fewest minutes, that brings the boat to `enough`; where none does, the shortest that brings her as near as can be. What is to be bought comes first. */
export function toGetReady(task: Task): { readonly actions: readonly Action[]; readonly suffices: boolean } {
  const score = scorer(task);
  const chosen = [...task.owed, ...chooseExtra(task, score)];
  const inOrder = [...chosen.filter(isBought), ...chosen.filter((candidate) => !isBought(candidate))];
  const done = doable(inOrder, task.aboard);
  const list = inOrder.filter((candidate) => done.has(candidate));
  const actions = list.map((candidate, i) => ({
    do: candidate.do,
    item: candidate.item,
    takes: done.get(candidate)!.takes,
    buys: candidate.buys,
    minutes: candidate.minutes,
    boatScoreAfter: (100 * score(list.slice(0, i + 1))) / task.passages,
  }));
  return { actions, suffices: score(list) >= task.enough && task.owed.every((one) => done.has(one)) };
}

function isBought({ buys }: Candidate): boolean {
  return buys !== null;
}

type Scorer = (done: readonly Candidate[]) => number;

function chooseExtra(task: Task, score: Scorer): readonly Candidate[] {
  const { owed, candidates } = task;
  if (score(owed) >= task.enough) return [];
  if (candidates.length > MOST_TRIED) return greedy(task, score);
  const lists = Array.from({ length: 2 ** candidates.length }, (_, mask) =>
    candidates.filter((_, place) => mask & (1 << place)),
  );
  return lists
    .map((list) => ({ list, reached: Math.min(score([...owed, ...list]), task.enough) }))
    .reduce((best, one) => (isBetter(one, best) ? one : best)).list;
}

interface Tried {
  readonly list: readonly Candidate[];
  /** Passages that end well, no more than are enough. */
  readonly reached: number;
}

function isBetter(one: Tried, than: Tried): boolean {
  if (one.reached !== than.reached) return one.reached > than.reached;
  if (one.list.length !== than.list.length) return one.list.length < than.list.length;
  return minutesOf(one.list) < minutesOf(than.list);
}

/** Takes what helps most until it is enough or nothing is left, then drops what turned out not to be needed. */
function greedy({ owed, candidates, enough }: Task, score: Scorer): readonly Candidate[] {
  const list: Candidate[] = [];
  const left = [...candidates];
  while (score([...owed, ...list]) < enough && left.length > 0) {
    const reached = left.map((candidate) => score([...owed, ...list, candidate]));
    list.push(...left.splice(reached.indexOf(Math.max(...reached)), 1));
  }
  return pruned(list, owed, score, Math.min(enough, score([...owed, ...list])));
}

/** Without what can be left out: the longest work first. */
function pruned(
  list: readonly Candidate[],
  owed: readonly Candidate[],
  score: Scorer,
  enough: number,
): readonly Candidate[] {
  let kept = list;
  for (const candidate of [...list].sort((a, b) => b.minutes - a.minutes)) {
    const without = kept.filter((other) => other !== candidate);
    if (score([...owed, ...without]) >= enough) kept = without;
  }
  return kept;
}

/** Counts the passages in which all that is vital holds once a list is done, as far as it can be. A requirement is judged anew only for what touches it, and each of those sets once. */
function scorer(task: Task): Scorer {
  const all = [...task.owed, ...task.candidates];
  const parts = task.vital.map(({ requirement, places }) => ({
    requirement,
    places,
    touching: all.filter((candidate) => touches(candidate, requirement)),
    held: new Map<string, Bits>(),
  }));
  return (list) => {
    const done = doable(list, task.aboard);
    const holds = allBits(task.passages);
    for (const { requirement, places, touching, held } of parts) {
      const those = touching.flatMap((candidate) => done.get(candidate) ?? []);
      const key = touching.map((candidate) => done.get(candidate)?.pouredL ?? done.has(candidate)).join();
      let bits = held.get(key);
      if (bits === undefined) {
        bits = heldAt(requirement, places, those, task);
        held.set(key, bits);
      }
      keepCommon(holds, bits);
    }
    return sizeOf(holds);
  };
}

function touches({ item, takes, buys }: Candidate, { items, stores }: Requirement): boolean {
  return (
    items.includes(item) ||
    takes.some(({ spare }) => stores.includes(spare)) ||
    (buys !== null && stores.includes(item))
  );
}

function heldAt(
  requirement: Requirement,
  places: readonly number[],
  done: readonly Candidate[],
  { hour, passages }: Task,
): Bits {
  const held = requirement.holding(workOf(done)).heldAt(hour);
  const bits = allBits(passages);
  for (const place of places) keepCommon(bits, held[place]!);
  return bits;
}
