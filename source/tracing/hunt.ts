import { type Chances, expectedBits, noisyOr, normalised, updated } from './beliefs.ts';
import { repairOrder } from './repair-order.ts';
import type { Cause, Clue, Table } from './table.ts';

/** A cause stands from here on: then there is nothing more to look for. */
export const STANDS = 0.9;

/** A table made ready to reckon with. A hypothesis is one cause, two that stand at once, or something else (none). */
export interface Hunt {
  readonly table: Table;
  readonly hypotheses: readonly (readonly number[])[];
  readonly prior: Chances;
  /** By clue, the chance that each hypothesis shows it. */
  readonly shown: ReadonlyMap<string, Chances>;
}

/** Work in the found causes, so many times, weighs as much as the table's own priors. Judgement. */
const TABLE_WEIGHT = 4;

/**
 * The table's hypotheses with their chances before any clue. Causes `found` on this boat before count beside the table's (Dirichlet, the table worth TABLE_WEIGHT
 * of them); parts of a count are allowed.
 */
export function huntOf(table: Table, found: ReadonlyMap<string, number> = new Map()): Hunt {
  const { causes, together, leak } = table;
  const counts = causes.map(({ id, prior }) => TABLE_WEIGHT * prior + (found.get(id) ?? 0));
  const single = normalised([...counts, TABLE_WEIGHT * table.somethingElse])!;
  const pairs =
    together === 0
      ? []
      : causes.flatMap((_, i) => causes.slice(i + 1).map((_, j) => [i, i + 1 + j] as const));
  const pairWeights = normalised(pairs.map(([i, j]) => single[i]! * single[j]!)) ?? [];
  const hypotheses = [...causes.map((_, i) => [i]), [], ...pairs];
  return {
    table,
    hypotheses,
    prior: [
      ...single.map((chance) => chance * (pairs.length === 0 ? 1 : 1 - together)),
      ...pairWeights.map((chance) => chance * together),
    ],
    shown: new Map(
      table.clues.map((clue) => [
        clue.id,
        hypotheses.map((standing) =>
          standing.length === 0
            ? clue.else
            : noisyOr(
                standing.map((i) => clue.chances[causes[i]!.id]!),
                leak,
              ),
        ),
      ]),
    ),
  };
}

/** The chance of each cause, in the order of the table; where two may stand at once these add up to more than 1 less something else. */
export function causeChances(
  { table, hypotheses }: Pick<Hunt, 'table' | 'hypotheses'>,
  beliefs: Chances,
): number[] {
  const chances = table.causes.map(() => 0);
  hypotheses.forEach((standing, h) => {
    for (const cause of standing) chances[cause]! += beliefs[h]!;
  });
  return chances;
}

/** The chance that it is nothing in the table. */
export function elseChance({ table }: Pick<Hunt, 'table'>, beliefs: Chances): number {
  return beliefs[table.causes.length]!;
}

/** Every look costs so many minutes before it begins: steps lifted, a lamp fetched. Judgement. */
const EVERY_LOOK_MINUTES = 10;
/** A step of nuisance weighs as so many minutes. Judgement. */
const NUISANCE_MINUTES = 4;
/** What cannot be done at anchor costs so many times its minutes, and parts so many minutes more. Judgement. */
const NOT_AT_ANCHOR = 4;
const PARTS_MINUTES = 30;

function lookMinutes({ minutes, nuisance }: Clue): number {
  return EVERY_LOOK_MINUTES + minutes + NUISANCE_MINUTES * nuisance;
}

export function repairCost({ minutes, parts, atAnchor }: Cause): number {
  return minutes * (atAnchor ? 1 : NOT_AT_ANCHOR) + (parts === undefined ? 0 : PARTS_MINUTES);
}

/** What would be done next: look no further and put the one cause right, or, for want of certainty, which repair first. Causes by index, something else last. */
export function nextAct(hunt: Hunt, beliefs: Chances): string {
  const chances = causeChances(hunt, beliefs);
  const stands = [...chances, elseChance(hunt, beliefs)].findIndex((chance) => chance >= STANDS);
  if (stands >= 0) return `stands ${stands}`;
  const repairs = chances.map((chance, i) => ({ chance, cost: repairCost(hunt.table.causes[i]!) }));
  return `first ${repairOrder(repairs)[0]}`;
}

export interface Look {
  readonly clue: Clue;
  readonly bits: number;
  readonly bitsPerMinute: number;
}

/**
 * The looks that are left, the best first: most expected bits for their minutes and nuisance. One that cannot change the next act, by itself or with one
 * more look after it, is left out; none when a cause stands.
 */
export function looksLeft(hunt: Hunt, beliefs: Chances, answered: ReadonlySet<string>): readonly Look[] {
  if (nextAct(hunt, beliefs).startsWith('stands')) return [];
  const left = hunt.table.clues.filter(({ id }) => !answered.has(id));
  return left
    .map((clue) => {
      const shown = hunt.shown.get(clue.id)!;
      const bits = expectedBits(beliefs, [shown, shown.map((chance) => 1 - chance)]);
      return { clue, bits, bitsPerMinute: bits / lookMinutes(clue) };
    })
    .filter(({ clue, bits }) => bits > 0 && canChange(hunt, beliefs, clue, left))
    .sort((a, b) => b.bitsPerMinute - a.bitsPerMinute);
}

function canChange(hunt: Hunt, beliefs: Chances, clue: Clue, left: readonly Clue[]): boolean {
  const [seen, not] = bothAnswers(hunt, beliefs, clue);
  if (nextAct(hunt, seen) !== nextAct(hunt, not)) return true;
  return left.some((other) => {
    if (other.id === clue.id) return false;
    const after = [bothAnswers(hunt, seen, other), bothAnswers(hunt, not, other)] as const;
    return [0, 1].some((k) => nextAct(hunt, after[0][k]!) !== nextAct(hunt, after[1][k]!));
  });
}

function bothAnswers({ shown }: Hunt, beliefs: Chances, { id }: Clue): readonly [Chances, Chances] {
  return [updated(beliefs, shown.get(id)!, true), updated(beliefs, shown.get(id)!, false)];
}
