import path from 'node:path';
import { nearest } from '../boat/nearest.ts';
import { readBoat } from '../boat/read.ts';
import { foldLog } from '../logbook/order.ts';
import type { BoatFolder, LoadedBoat } from '../outside.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { acceptEdited } from './accept.ts';
import { append } from './append.ts';
import { changeBoat } from './change-boat.ts';
import { makeCheckedCopy } from './checked-copy.ts';
import { codeOf, type Disk } from './disk.ts';
import { keepForecast, readForecasts } from './forecasts.ts';
import { asLogFile } from './log-file.ts';
import { mergeFolder } from './merge.ts';
import { goneTroubles, olderCopyTroubles, ownWriter } from './own-writer.ts';
import { readTextFile } from './read-text.ts';
import { roomTroubles, whatStandsInTheWay } from './room.ts';
import { sealOwnTail } from './seal.ts';
import { type Keeping, newShelf, refresh, type Shelf } from './shelf.ts';
import { readTables } from './tables.ts';
import { watchFolder } from './watch.ts';

/** A boat file is written by hand: even one of hundreds of items stays far below. */
const mostBoatBytes = 4 * 1024 * 1024;

/** Opens a boat folder; nothing is read before `read`. What has been read is kept, so a second `read` takes in only what has changed. */
export function boatFolder(keeping: Keeping): BoatFolder {
  const shelf = newShelf(keeping);
  return {
    path: path.resolve(keeping.boat),
    read: async () => load(shelf),
    append: async (drafts) => append(shelf, drafts),
    changeBoat: async (change) => changeBoat(keeping.disk, keeping.boat, change, mostBoatBytes),
    keepForecast: async (forecast) => keepForecast(keeping.disk, keeping.boat, forecast),
    tables: async () => readTables(keeping.disk, keeping.boat),
    accept: async () => acceptEdited(shelf),
    merge: async (from, anyName) => mergeFolder(keeping, from, anyName),
    copyTo: async (place) => makeCheckedCopy(keeping, place),
    watch: (changed) => watchFolder(keeping.disk, keeping.boat, changed),
  };
}

function load(shelf: Shelf): Result<LoadedBoat> {
  const { disk, boat: folder } = shelf.keeping;
  const text = readTextFile(disk, path.join(folder, 'boat.json'), mostBoatBytes);
  if (!text.ok) return bad(...text.troubles.map((trouble) => noFolder(disk, folder, trouble)));
  const boat = readBoat(text.value, 'boat.json');
  if (!boat.ok) return boat;
  refresh(shelf);
  const readOnly = whatStandsInTheWay(shelf, ownWriter(shelf));
  if (!readOnly) sealOwnTail(shelf);
  const { entries, struck, said, quiet } = foldLog(shelf.files.map(asLogFile));
  const taken = readForecasts(disk, folder);
  const unread = shelf.files.flatMap(({ trouble }) => trouble ?? []);
  const troubles = [
    ...shelf.troubles,
    ...unread,
    ...olderCopyTroubles(shelf),
    ...goneTroubles(shelf),
    ...said,
    ...taken.troubles,
    ...shelf.told,
  ];
  return good({
    boat: boat.value,
    entries,
    struck,
    forecasts: taken.forecasts,
    troubles: [...troubles, ...(readOnly ? [] : roomTroubles(disk, folder))],
    quiet,
    readOnly,
  });
}

function noFolder(disk: Disk, folder: string, trouble: Trouble): Trouble {
  const missing = trouble.kind === 'cannot read' && (trouble.code === 'ENOENT' || trouble.code === 'ENOTDIR');
  return missing ? { kind: 'no boat folder', folder, ...nearBoat(disk, folder) } : trouble;
}

/** A boat folder right inside it, or beside it under nearly the same name. */
function nearBoat(disk: Disk, folder: string): { near?: string } {
  const inside = boatsIn(disk, folder)[0];
  if (inside !== undefined) return { near: path.join(folder, inside) };
  const above = path.dirname(path.resolve(folder));
  const beside = nearest(path.basename(folder), boatsIn(disk, above));
  return beside === undefined ? {} : { near: path.join(path.dirname(folder), beside) };
}

/** A folder of thousands is no place where boats are kept. */
const mostLookedAt = 200;

function boatsIn(disk: Disk, folder: string): readonly string[] {
  try {
    const names = disk.list(folder).slice(0, mostLookedAt);
    return names.filter((name) => isThere(disk, path.join(folder, name, 'boat.json')));
  } catch (error) {
    codeOf(error);
    return [];
  }
}

function isThere(disk: Disk, file: string): boolean {
  try {
    return disk.facts(file).plain;
  } catch (error) {
    codeOf(error);
    return false;
  }
}
