import path from 'node:path';
import { highestCount, mostLeap } from '../logbook/counts.ts';
import type { Crc32, Line } from '../logbook/line.ts';
import type { Trouble } from '../trouble.ts';
import { codeOf, type Disk } from './disk.ts';
import type { Lock } from './lock.ts';
import { asLogFile, type ReadLogFile, readLogFile, splitFileName } from './log-file.ts';
import { placeOf } from './mark.ts';

/** What a boat's log is kept with. */
export interface Keeping {
  readonly disk: Disk;
  readonly lock: Lock;
  readonly crc32: Crc32;
  /** The boat folder. */
  readonly boat: string;
  /** Where it will stand once it is whole, if not there yet. */
  readonly finally?: string;
  /** Where this laptop keeps its marks and locks, outside every boat folder. */
  readonly state: string;
  /** 16 hexadecimal digits that tell this laptop from another. */
  readonly machine: string;
  /** The clock, ms since 1970 UTC. */
  readonly now: () => number;
  /** A new writer id by chance: 8 characters of Crockford's base 32, lower case. */
  readonly newWriter: () => string;
}

/** The log files of a boat folder as last read, and what the next entry has to follow. */
export interface Shelf {
  readonly keeping: Keeping;
  readonly log: string;
  /** By which marks tell this folder from others. */
  readonly place: string;
  /** By writer and segment. */
  files: readonly ReadLogFile[];
  /** About the folder itself: stray files, a log that is no folder. */
  troubles: readonly Trouble[];
  /** Disk errors met while saving. */
  readonly told: Trouble[];
  /** Files the disk has failed on: not written to again. */
  readonly dead: Set<string>;
  /** Files whose names are on the disk for certain, with those of the folders they are in. */
  readonly named: Set<string>;
  /** Under which this process saved last, so that the next save need not look for it before it has the lock. */
  writer: string | null;
  /** The highest Lamport count ever read: what is out of reach for a moment still counts. */
  highest: number;
  keys: Set<string>;
}

export function newShelf(keeping: Keeping): Shelf {
  return {
    keeping,
    log: path.join(keeping.boat, 'log'),
    place: placeOf(keeping.finally ?? keeping.boat),
    files: [],
    troubles: [],
    told: [],
    dead: new Set(),
    named: new Set(),
    writer: null,
    highest: 0,
    keys: new Set(),
  };
}

/** Reads what has changed on the disk since the last time. */
export function refresh(shelf: Shelf): void {
  const { disk } = shelf.keeping;
  const { names, troubles } = listLog(disk, shelf.log);
  const known = new Map(shelf.files.map((file) => [file.file, file]));
  const files = names.map((name) => {
    const file = path.join(shelf.log, name);
    return readLogFile(shelf.keeping, file, known.get(file) ?? null);
  });
  shelf.troubles = troubles;
  if (files.length === shelf.files.length && files.every((file) => known.get(file.file) === file)) return;
  for (const { file, dead } of files) if (dead) shelf.dead.add(file);
  takeIn(shelf, files, known);
  believeNames(shelf);
}

/** Syncs the folders of the log, so that a name that was read or made cannot be lost any more. Throws what the disk throws. */
export function syncNames({ keeping: { disk, boat }, log }: Shelf): void {
  disk.syncFolder(log);
  disk.syncFolder(boat);
}

/** Puts the reading of a file in its place after an append of this process, which has `added` these lines to it. */
export function putFile(shelf: Shelf, file: ReadLogFile, added: readonly Line[]): void {
  shelf.files = sorted([...shelf.files.filter((old) => old.file !== file.file), file]);
  follow(shelf, added);
}

/** The files of one writer, in the order of their segments. */
export function filesOf(shelf: Shelf, writer: string): readonly ReadLogFile[] {
  return shelf.files.filter((file) => file.writer === writer);
}

function takeIn(shelf: Shelf, files: readonly ReadLogFile[], known: ReadonlyMap<string, ReadLogFile>): void {
  shelf.files = sorted(files);
  const gone = shelf.files.length < known.size;
  const added = shelf.files.map((file) => addedLines(known.get(file.file), file));
  if (gone || !added.every((lines) => lines !== null)) {
    shelf.keys = new Set();
    follow(
      shelf,
      shelf.files.flatMap(({ lines }) => lines),
    );
  } else {
    follow(shelf, added.flat());
  }
}

function sorted(files: readonly ReadLogFile[]): readonly ReadLogFile[] {
  return files.toSorted((a, b) =>
    a.writer < b.writer ? -1 : a.writer > b.writer ? 1 : a.segment - b.segment,
  );
}

/** The lines a file has now and had not before; null when it is not the old one grown longer. */
function addedLines(before: ReadLogFile | undefined, now: ReadLogFile): readonly Line[] | null {
  if (before === now) return [];
  if (!before) return now.lines;
  if (before.lines.length > now.lines.length || before.lines[0] !== now.lines[0]) return null;
  return now.lines.slice(before.lines.length);
}

function follow(shelf: Shelf, lines: readonly Line[]): void {
  let leapt = false;
  for (const line of lines) {
    const { frame } = line;
    if (!frame) continue;
    if (frame.lc - shelf.highest > mostLeap) leapt = true;
    else if (frame.lc > shelf.highest) shelf.highest = frame.lc;
    const key = line.how === 'entry' ? line.frame.key : undefined;
    if (key !== undefined) shelf.keys.add(key);
  }
  if (leapt) shelf.highest = Math.max(shelf.highest, highestCount(shelf.files.map(asLogFile)));
}

function listLog(disk: Disk, log: string): { names: readonly string[]; troubles: readonly Trouble[] } {
  try {
    if (!disk.isFolder(log)) return { names: [], troubles: [{ kind: 'not a plain file', file: 'log' }] };
    const all = disk.list(log).sort();
    const stray = all.filter((name) => name.endsWith('.ndjson') && !splitFileName(name));
    return {
      names: all.filter(splitFileName),
      troubles: stray.map((name) => ({ kind: 'stray file', file: `log/${name}` })),
    };
  } catch (error) {
    const code = codeOf(error);
    return { names: [], troubles: code === 'ENOENT' ? [] : [{ kind: 'cannot read', file: 'log', code }] };
  }
}

/** Names that were read must be on the disk before they are believed; where syncing is refused, as on a disk for reading only, they are. */
function believeNames(shelf: Shelf): void {
  const files = shelf.files.map(({ file }) => file);
  if (files.every((file) => shelf.named.has(file))) return;
  try {
    syncNames(shelf);
    for (const file of files) shelf.named.add(file);
  } catch (error) {
    codeOf(error);
  }
}
