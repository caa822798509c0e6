import path from 'node:path';
import { readBoat } from '../boat/read.ts';
import type { Entry } from '../logbook/entries.ts';
import { foldLog, type Logbook } from '../logbook/order.ts';
import type { CheckedCopy } from '../outside.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { codeOf, type Disk } from './disk.ts';
import { asLogFile, splitFileName } from './log-file.ts';
import { isForecastName, mergeLog, nameIn } from './merge.ts';
import { namesIn } from './names-in.ts';
import { readSmallFile, readTextFile } from './read-text.ts';
import { replaceFile } from './replace.ts';
import { type Keeping, newShelf, refresh } from './shelf.ts';

const mostFileBytes = 32 * 1024 * 1024;
/** All that a boat folder holds: of anything else a copy knows nothing. */
const ownNames = new Set(['boat.json', 'boat.json.bak', 'boat.json.new', 'log', 'forecasts', 'tracing']);

/**
 * Copies the boat folder into the folder `place`, under its own name, and then reads the copy from the disk as `inspect` reads a boat. Ok only where every
 * entry that is here was found there. At every instant, power cuts included, the copy has all it had before: each file is replaced whole or not at
 * all, and a log file only by one that goes on from it; where the copy has lines that are not here, it keeps them.
 */
export function makeCheckedCopy(keeping: Keeping, place: string): Result<CheckedCopy> {
  const { disk, state, lock } = keeping;
  if (!path.isAbsolute(place))
    return bad({ kind: 'no place for a copy', folder: place, why: 'not from the root' });
  try {
    const to = placeIn(keeping, place);
    if (!to.ok) return to;
    disk.makeFolder(state);
    return lock('merge', () => copyAlone(keeping, to.value));
  } catch (error) {
    return bad({ kind: 'not copied', to: place, code: codeOf(error) });
  }
}

/** A place that is not there is not made: it is where a stick should be, and the copy would land beside the boat itself. */
function placeIn({ disk, boat }: Keeping, place: string): Result<string> {
  const [own, root] = [disk.real(boat), disk.real(place)];
  const to = path.join(root, path.basename(own));
  const inside = (folder: string) => disk.facts(folder).identity === disk.facts(own).identity;
  if (upwards(root).some(inside) || (isThere(disk, to) && inside(to)))
    return bad({ kind: 'no place for a copy', folder: place, why: 'the boat folder itself' });
  if (!isThere(disk, to)) {
    /** Throws where the place is a file. */
    disk.list(root);
    return good(to);
  }
  return isCopyOf(disk, to, own)
    ? good(to)
    : bad({ kind: 'no place for a copy', folder: place, why: 'taken' });
}

function upwards(folder: string): readonly string[] {
  const above = path.dirname(folder);
  return above === folder ? [folder] : [folder, ...upwards(above)];
}

/** Nothing yet, what a copy that was broken off has left, or a boat of that name or with a log file of ours. */
function isCopyOf(disk: Disk, to: string, own: string): boolean {
  const ours = new Set(namesIn(disk, path.join(own, 'log')).filter(splitFileName));
  if (namesIn(disk, path.join(to, 'log')).some((name) => ours.has(name))) return true;
  if (!disk.list(to).every((name) => ownNames.has(name))) return false;
  const [name, there] = [own, to].map((folder) =>
    nameIn(readSmallFile(disk, path.join(folder, 'boat.json'), mostFileBytes)),
  );
  return !isThere(disk, path.join(to, 'boat.json')) || name === there;
}

function copyAlone(keeping: Keeping, to: string): Result<CheckedCopy> {
  const { disk, boat } = keeping;
  const here = logOf(keeping);
  for (const folder of ['', 'log']) disk.makeFolder(path.join(to, folder));
  for (const folder of [to, path.dirname(to)]) disk.syncFolder(folder);
  const troubles: Trouble[] = [...here.unread];
  for (const name of namesIn(disk, path.join(boat, 'log')).filter(splitFileName)) {
    const copied = mergeLog({ ...keeping, boat: to }, boat, name);
    if (!copied.ok) troubles.push(...copied.troubles);
  }
  troubles.push(...copyBoatFile(disk, boat, to));
  for (const folder of ['forecasts', 'tracing']) troubles.push(...copyFolder(disk, { boat, to, folder }));
  if (troubles.length > 0) return bad({ kind: 'not copied', to, code: null }, ...troubles);
  const there = logOf({ ...keeping, boat: to });
  const lacks = missing(here.log, there.log);
  const unsound = [...there.unread, ...newDamage(here.log, there.log), ...boatFileTroubles(disk, to)];
  if (lacks > 0 || unsound.length > 0) return bad({ kind: 'copy unsound', folder: to, lacks }, ...unsound);
  const entries = here.log.entries.length + here.log.struck.length;
  return good({ from: disk.real(boat), to, entries, more: missing(there.log, here.log) });
}

interface LogRead {
  readonly log: Logbook;
  readonly unread: readonly Trouble[];
}

/** As it stands on the disk. Nothing is written, nor sealed. */
function logOf(keeping: Keeping): LogRead {
  const shelf = newShelf(keeping);
  refresh(shelf);
  const unread = shelf.files.flatMap(({ trouble }) => trouble ?? []);
  const noFolder = shelf.troubles.filter(({ kind }) => kind !== 'stray file');
  return { log: foldLog(shelf.files.map(asLogFile)), unread: [...noFolder, ...unread] };
}

/** How many entries of the one are not in the other. */
function missing(one: Logbook, other: Logbook): number {
  const key = ({ id, lc, at }: Entry) => `${id.replace(/:.*/, '')} ${lc} ${at}`;
  const there = new Set([...other.entries, ...other.struck].map(key));
  return [...one.entries, ...one.struck].filter((entry) => !there.has(key(entry))).length;
}

/** What is wrong over there and is not here. */
function newDamage(here: Logbook, there: Logbook): readonly Trouble[] {
  const told = new Set(here.said.map((trouble) => JSON.stringify(trouble)));
  const harmless = new Set<Trouble['kind']>(['line cut off', 'clock', 'newer entries']);
  return there.said.filter((one) => !harmless.has(one.kind) && !told.has(JSON.stringify(one)));
}

/** One that cannot be used takes no sound one's place. */
function copyBoatFile(disk: Disk, boat: string, to: string): readonly Trouble[] {
  const wrong = boatFileTroubles(disk, boat);
  return wrong.length > 0 ? wrong : copyFile(disk, { from: boat, to, name: 'boat.json' });
}

function boatFileTroubles(disk: Disk, folder: string): readonly Trouble[] {
  const text = readTextFile(disk, path.join(folder, 'boat.json'), mostFileBytes);
  const boat = text.ok ? readBoat(text.value, 'boat.json') : text;
  return boat.ok ? [] : boat.troubles;
}

/** Forecasts are called by what they hold and never change: one as long as ours is ours. */
function copyFolder(
  disk: Disk,
  { boat, to, folder }: { readonly boat: string; readonly to: string; readonly folder: string },
): readonly Trouble[] {
  const [from, there] = [path.join(boat, folder), path.join(to, folder)];
  const names = namesIn(disk, from).filter((name) =>
    folder === 'forecasts' ? isForecastName(name) : disk.facts(path.join(from, name)).plain,
  );
  if (names.length > 0) {
    disk.makeFolder(there);
    disk.syncFolder(to);
  }
  const sizes = (name: string) =>
    [from, there].map((place) =>
      isThere(disk, path.join(place, name)) ? disk.facts(path.join(place, name)).bytes : -1,
    );
  return names.flatMap((name) => {
    const [ours, theirs] = sizes(name);
    return folder === 'forecasts' && ours === theirs ? [] : copyFile(disk, { from, to: there, name });
  });
}

function copyFile(
  disk: Disk,
  { from, to, name }: { readonly from: string; readonly to: string; readonly name: string },
): readonly Trouble[] {
  const ours = readSmallFile(disk, path.join(from, name), mostFileBytes);
  if (!ours.ok) return ours.troubles;
  const file = path.join(to, name);
  const theirs = isThere(disk, file) ? readSmallFile(disk, file, mostFileBytes) : null;
  if (theirs?.ok && Buffer.compare(theirs.value, ours.value) === 0) return [];
  const failed = replaceFile(disk, file, ours.value, { backup: name === 'boat.json' });
  return failed ? [{ kind: 'cannot write', ...failed }] : [];
}

function isThere(disk: Disk, file: string): boolean {
  try {
    disk.facts(file);
    return true;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
}
