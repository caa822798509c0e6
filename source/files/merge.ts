import path from 'node:path';
import { isPrefix, unionOfLogs } from '../logbook/union.ts';
import type { Merged, MergedFile } from '../outside.ts';
import { assert, bad, good, type Result, type Trouble } from '../trouble.ts';
import { codeOf, type Disk } from './disk.ts';
import { splitFileName } from './log-file.ts';
import { readMark } from './mark.ts';
import { namesIn } from './names-in.ts';
import { readSmallFile } from './read-text.ts';
import { replaceFile } from './replace.ts';
import type { Keeping } from './shelf.ts';

const mostLogBytes = 256 * 1024 * 1024;
const mostOtherBytes = 32 * 1024 * 1024;
const forecastName = /^\d{8}T\d{4}Z-[0-9a-z]+\.json$/;

/**
 * Takes everything another copy of the boat folder has into this one. Nothing is changed over there. Both ways round, in any order and however often,
 * it ends with the same bytes: a laptop's file is taken when it is longer, and where two copies of it have gone different ways every line of both is kept.
 */
export function mergeFolder(keeping: Keeping, from: string, anyName: boolean): Result<Merged> {
  const { disk, state, lock } = keeping;
  try {
    disk.makeFolder(state);
    return lock('merge', () => mergeAlone(keeping, from, anyName));
  } catch (error) {
    return bad({ kind: 'cannot write', file: state, code: codeOf(error) });
  }
}

/** Two at once would write the same files aside. */
function mergeAlone(keeping: Keeping, from: string, anyName: boolean): Result<Merged> {
  const { disk, boat } = keeping;
  const logs = logsIn(disk, from);
  const theirBoat = readSmallFile(disk, path.join(from, 'boat.json'), mostOtherBytes);
  if (!theirBoat.ok && logs.length === 0) return bad({ kind: 'no boat folder', folder: from });
  const ourBoat = readSmallFile(disk, path.join(boat, 'boat.json'), mostOtherBytes);
  const [name, ours] = [nameIn(theirBoat), nameIn(ourBoat)];
  if (!anyName && (name === null || name !== ours)) {
    return bad({ kind: 'another boat', folder: from, name, ours: ours ?? '' });
  }
  const files: MergedFile[] = [];
  const troubles: Trouble[] = [];
  if (logs.length > 0) troubles.push(...madeFolder(disk, path.join(boat, 'log')));
  for (const name of logs) {
    const merged = mergeLog(keeping, from, name);
    if (merged.ok) files.push({ name, how: merged.value });
    else troubles.push(...merged.troubles);
  }
  const forecasts = takeForecasts(disk, boat, from);
  return good({
    files,
    forecasts: forecasts.taken,
    boatDiffers: theirBoat.ok && ourBoat.ok && !same(theirBoat.value, ourBoat.value),
    theyLack:
      files.some(({ how }) => how === 'united' || how === 'ours longer') ||
      logsIn(disk, boat).some((file) => !logs.includes(file)) ||
      forecastsIn(disk, boat).some((file) => !forecastsIn(disk, from).includes(file)),
    troubles: [...troubles, ...forecasts.troubles],
  });
}

/** Takes one log file of another copy of the folder into this one. */
export function mergeLog(keeping: Keeping, from: string, name: string): Result<MergedFile['how']> {
  const { disk, lock, state } = keeping;
  const named = splitFileName(name);
  assert(named, 'only log files are merged');
  const merge = () => mergeFile(keeping, path.join(from, 'log', name), path.join(keeping.boat, 'log', name));
  try {
    /** Only files this laptop may append to are appended to under a lock, so only those are merged under it. */
    return readMark(disk, state, named.writer) ? lock(named.writer, merge) : merge();
  } catch (error) {
    return bad({ kind: 'cannot write', file: `log/${name}`, code: codeOf(error) });
  }
}

function mergeFile({ disk, crc32 }: Keeping, theirFile: string, ourFile: string): Result<MergedFile['how']> {
  const theirs = readSmallFile(disk, theirFile, mostLogBytes);
  if (!theirs.ok) return theirs;
  const ours = readSmallFile(disk, ourFile, mostLogBytes);
  if (!ours.ok && !isMissing(ours.troubles)) return ours;
  const { how, bytes } = decided(ours.ok ? ours.value : null, theirs.value, (a, b) =>
    unionOfLogs(a, b, crc32),
  );
  if (!bytes) return good(how);
  const failed = replaceFile(disk, ourFile, bytes);
  return failed ? bad({ kind: 'cannot write', ...failed }) : good(how);
}

interface Decision {
  readonly how: MergedFile['how'];
  /** What takes the place of ours; null when ours stays. */
  readonly bytes: Uint8Array | null;
}

function decided(
  ours: Uint8Array | null,
  theirs: Uint8Array,
  union: (a: Uint8Array, b: Uint8Array) => Uint8Array,
): Decision {
  if (!ours) return { how: 'new', bytes: theirs };
  if (same(ours, theirs)) return { how: 'same', bytes: null };
  if (isPrefix(theirs, ours)) return { how: 'ours longer', bytes: null };
  if (isPrefix(ours, theirs)) return { how: 'longer', bytes: theirs };
  const both = union(ours, theirs);
  return same(both, ours) ? { how: 'ours longer', bytes: null } : { how: 'united', bytes: both };
}

function takeForecasts(disk: Disk, boat: string, from: string): { taken: string[]; troubles: Trouble[] } {
  const ours = new Set(forecastsIn(disk, boat));
  const missing = forecastsIn(disk, from).filter((name) => !ours.has(name));
  const taken: string[] = [];
  const troubles = missing.length > 0 ? madeFolder(disk, path.join(boat, 'forecasts')) : [];
  for (const name of missing) {
    const bytes = readSmallFile(disk, path.join(from, 'forecasts', name), mostOtherBytes);
    const failed = bytes.ok ? replaceFile(disk, path.join(boat, 'forecasts', name), bytes.value) : null;
    if (!bytes.ok) troubles.push(...bytes.troubles);
    else if (failed) troubles.push({ kind: 'cannot write', ...failed });
    else taken.push(name);
  }
  return { taken, troubles };
}

function logsIn(disk: Disk, folder: string): readonly string[] {
  return namesIn(disk, path.join(folder, 'log')).filter(splitFileName);
}

function forecastsIn(disk: Disk, folder: string): readonly string[] {
  return namesIn(disk, path.join(folder, 'forecasts')).filter(isForecastName);
}

export function isForecastName(name: string): boolean {
  return forecastName.test(name);
}

/** The name in a boat file, however much else in it may be wrong or new; null where there is none. */
export function nameIn(file: Result<Uint8Array>): string | null {
  if (!file.ok) return null;
  try {
    const boat: unknown = JSON.parse(new TextDecoder().decode(file.value));
    const name = typeof boat === 'object' && boat !== null && 'name' in boat ? boat.name : null;
    return typeof name === 'string' ? name : null;
  } catch {
    return null;
  }
}

function same(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && isPrefix(a, b);
}

function isMissing(troubles: readonly Trouble[]): boolean {
  return troubles.every((trouble) => trouble.kind === 'cannot read' && trouble.code === 'ENOENT');
}

function madeFolder(disk: Disk, folder: string): Trouble[] {
  try {
    disk.makeFolder(folder);
    disk.syncFolder(path.dirname(folder));
    return [];
  } catch (error) {
    return [{ kind: 'cannot write', file: folder, code: codeOf(error) }];
  }
}
