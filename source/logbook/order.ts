import type { LogTrouble } from '../trouble.ts';
import { byCause, type Sound } from './cause.ts';
import { type ChainTroubles, followChain, type LogFile } from './chain.ts';
import { clockTroubles } from './clock.ts';
import { leapTroubles } from './counts.ts';
import type { Entry } from './entries.ts';
import { compareInstants } from './instants.ts';
import { onceByKey } from './keys.ts';
import { withdrawnIn } from './strikes.ts';
import { uniqueLines } from './unique-lines.ts';

/** The logs of all writers folded into one. */
export interface Logbook {
  /** By when it happened; what happened at one instant by cause and effect. Each `key` once. */
  readonly entries: readonly Entry[];
  /** Withdrawn by a strike, in the same order. */
  readonly struck: readonly Entry[];
  readonly said: readonly LogTrouble[];
  /** For `inspect` only. */
  readonly quiet: readonly LogTrouble[];
}

/**
 * Folds the files of any number of writers, several segments each (in order), into one log. The answer depends neither on the order of the writers
 * nor on how often a line is there. Strikes and ties follow (`lc`, writer, number), so a wrong clock cannot reorder cause and effect.
 */
export function foldLog(files: readonly LogFile[]): Logbook {
  const chains = chainsOf(files);
  const tidy = chains.every((chain) => chain.tidy);
  const { lines, newer, forks } = uniqueLines(files, tidy);
  const { once, copies } = onceByKey(lines);
  const withdrawn = withdrawnIn(once, { all: lines, copies });
  const standing = withdrawn.size === 0 ? once : once.filter((entry) => !withdrawn.has(entry));
  return {
    entries: standing.toSorted(byTime),
    struck: [...withdrawn].sort(byTime),
    said: [
      ...capped(chains.flatMap(({ said }) => said)),
      ...capped(forks),
      ...leapTroubles(files),
      ...(newer > 0 ? [{ kind: 'newer entries', count: newer } as const] : []),
      ...clockTroubles(standing),
    ],
    quiet: chains.flatMap(({ quiet }) => quiet),
  };
}

function byTime(a: Sound, b: Sound): number {
  return compareInstants(a.at, b.at) || byCause(a, b);
}

function chainsOf(files: readonly LogFile[]): readonly ChainTroubles[] {
  let keys: Set<string> | null = null;
  return [...Map.groupBy(files, ({ writer }) => writer).values()].map((own) =>
    followChain(own, (line) => {
      if (line.how !== 'edited') return false;
      keys ??= keysIn(files);
      return keys.has(line.key);
    }),
  );
}

function keysIn(files: readonly LogFile[]): Set<string> {
  const keys = files.flatMap(({ lines }) =>
    lines.flatMap((line) => (line.how === 'entry' && line.frame.key !== undefined ? [line.frame.key] : [])),
  );
  return new Set(keys);
}

/** A file of nonsense has a trouble a line; the first ones tell as much as all of them. */
const mostTold = 100;

function capped(troubles: readonly LogTrouble[]): readonly LogTrouble[] {
  if (troubles.length <= mostTold) return troubles;
  return [...troubles.slice(0, mostTold), { kind: 'more damage', count: troubles.length - mostTold }];
}
