import type { LogTrouble } from '../trouble.ts';
import { byCause, type Sound } from './cause.ts';
import { followChain, type LogFile } from './chain.ts';
import { clockTroubles } from './clock.ts';
import { leapTroubles } from './counts.ts';
import type { Entry } from './entries.ts';
import { hex } from './line.ts';
import { type Copies, withdrawnIn } from './strikes.ts';

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
  const { byId, newer, forks } = uniqueLines(files);
  const all = [...byId.values()].flat();
  const { once, copies } = onceByKey(all);
  const withdrawn = withdrawnIn(once, { byId, copies });
  const standing: Sound[] = [];
  const struck: Sound[] = [];
  for (const one of once) (withdrawn.has(one) ? struck : standing).push(one);
  const keys = new Set(all.map(({ entry }) => entry.key));
  const chains = writersOf(files).map((own) =>
    followChain(own, (line) => line.how === 'edited' && keys.has(line.key)),
  );
  const entries = byTime(standing);
  return {
    entries,
    struck: byTime(struck),
    said: [
      ...capped(chains.flatMap((chain) => chain.said)),
      ...capped(forks),
      ...leapTroubles(files),
      ...(newer > 0 ? [{ kind: 'newer entries', count: newer } as const] : []),
      ...clockTroubles(entries),
    ],
    quiet: chains.flatMap((chain) => chain.quiet),
  };
}

/** A file of nonsense has a trouble a line; the first ones tell as much as all of them. */
const mostTold = 100;

function capped(troubles: readonly LogTrouble[]): readonly LogTrouble[] {
  if (troubles.length <= mostTold) return troubles;
  return [...troubles.slice(0, mostTold), { kind: 'more damage', count: troubles.length - mostTold }];
}

interface Unique {
  /** By the id as written in the line; more than one where the same id has different bytes. */
  readonly byId: ReadonlyMap<string, readonly Sound[]>;
  readonly newer: number;
  readonly forks: readonly LogTrouble[];
}

function uniqueLines(files: readonly LogFile[]): Unique {
  const byId = new Map<string, Sound[]>();
  const newer = new Set<string>();
  const forked = new Map<string, LogTrouble>();
  for (const { name: file, lines } of files) {
    for (const [i, line] of lines.entries()) {
      if (line.how === 'newer') newer.add(`${line.frame.writer}-${line.frame.n}:${line.frame.crc}`);
      if (line.how !== 'entry') continue;
      const { id } = line.entry;
      const same = byId.get(id);
      if (!same) byId.set(id, [line]);
      else if (same.every(({ frame }) => frame.crc !== line.frame.crc)) {
        same.push(line);
        forked.set(id, { kind: 'same id twice', place: { file, line: i + 1 }, id });
      }
    }
  }
  for (const id of forked.keys()) byId.set(id, byId.get(id)?.map(withChecksum) ?? []);
  return { byId, newer: newer.size, forks: [...forked.values()] };
}

/** Where one id stands for two different lines, each is called by its id and checksum. */
function withChecksum(line: Sound): Sound {
  return { ...line, entry: { ...line.entry, id: `${line.entry.id}:${hex(line.frame.crc)}` } };
}

function onceByKey(all: readonly Sound[]): { readonly once: readonly Sound[]; readonly copies: Copies } {
  const firsts = new Map<string, Sound>();
  for (const one of all) {
    const { key } = one.entry;
    if (key === undefined) continue;
    const first = firsts.get(key);
    if (!first || byCause(one, first) < 0) firsts.set(key, one);
  }
  if (firsts.size === 0) return { once: all, copies: new Map() };
  const copies = new Map<Sound, Sound>();
  const once = all.filter((one) => {
    const first = one.entry.key === undefined ? one : firsts.get(one.entry.key);
    if (first && first !== one) copies.set(one, first);
    return first === one;
  });
  return { once, copies };
}

/** The files by writer, in the order given. */
function writersOf(files: readonly LogFile[]): readonly (readonly LogFile[])[] {
  return [...Map.groupBy(files, ({ writer }) => writer).values()];
}

function byTime(lines: readonly Sound[]): readonly Entry[] {
  const times = Float64Array.from(lines, ({ entry }) => Date.parse(entry.at));
  const order = lines.map((_, i) => i);
  order.sort((i, j) => times[i]! - times[j]! || byCause(lines[i]!, lines[j]!));
  return order.map((i) => lines[i]!.entry);
}
