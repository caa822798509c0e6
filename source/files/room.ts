import path from 'node:path';
import type { Trouble } from '../trouble.ts';
import { codeOf, type Disk } from './disk.ts';
import { filesOf, type Shelf } from './shelf.ts';

/** Below this the skipper is warned: a day's entries are a few kilobytes, but what else fills the disk is not known. */
const littleRoomBytes = 50e6;
/** Below this not even a few entries and the file system's own tables are sure to fit. */
const noRoomBytes = 64 * 1024;

/** Why no entry can be saved here, found out before anyone types one; null when nothing is known to stand in the way. */
export function whatStandsInTheWay(shelf: Shelf, writer: string | null): Trouble | null {
  const { disk, boat, state } = shelf.keeping;
  const noFolder = shelf.troubles.find(({ kind }) => kind === 'not a plain file');
  if (noFolder) return noFolder;
  const file = writer ? filesOf(shelf, writer).at(-1)?.file : undefined;
  for (const place of [shelf.log, state]) {
    const code = refusalOf(() => disk.mayWrite(existing(disk, place)));
    if (code !== null) return { kind: 'read only', folder: place === shelf.log ? boat : state, code };
  }
  const code = file === undefined ? null : refusalOf(() => disk.mayWrite(file));
  if (code !== null) return { kind: 'read only', folder: boat, code };
  return roomIn(disk, boat) < noRoomBytes ? { kind: 'read only', folder: boat, code: 'ENOSPC' } : null;
}

/** A disk that will soon be full. */
export function roomTroubles(disk: Disk, folder: string): readonly Trouble[] {
  const bytes = roomIn(disk, folder);
  return bytes < littleRoomBytes ? [{ kind: 'little room', folder, bytes }] : [];
}

function refusalOf(look: () => void): string | null {
  try {
    look();
    return null;
  } catch (error) {
    return codeOf(error);
  }
}

/** The folder itself, or where it is not there yet the nearest one above it that is. */
function existing(disk: Disk, folder: string): string {
  const above = path.dirname(folder);
  return above === folder || refusalOf(() => disk.facts(folder)) !== 'ENOENT'
    ? folder
    : existing(disk, above);
}

function roomIn(disk: Disk, folder: string): number {
  try {
    return disk.roomBytes(folder);
  } catch (error) {
    codeOf(error);
    return Number.POSITIVE_INFINITY;
  }
}
