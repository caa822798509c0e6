import path from 'node:path';
import type { NewFolder } from '../outside.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { append } from './append.ts';
import { codeOf, type Disk } from './disk.ts';
import { marksOf, placeOf, removeMark } from './mark.ts';
import { replaceFile } from './replace.ts';
import { type Keeping, newShelf } from './shelf.ts';

/**
 * A place for a new boat folder: not there yet, or empty. All of it is made beside its place under another name and then renamed, so that at every
 * instant, power cuts included, there is either no boat or the whole one. `keepingOf` keeps the log of a folder.
 */
export function newFolder(keepingOf: (folder: string) => Keeping, folder: string): Result<NewFolder> {
  const place = path.resolve(folder);
  const { disk } = keepingOf(place);
  const taken = whatIsThere(disk, place, folder);
  if (taken) return bad(taken);
  return good({
    path: place,
    fill: async (boatText, drafts) => {
      const aside = freeName(disk, `${place}.new`);
      const cannot = (code: string) => {
        removeAll(disk, aside);
        return bad({ kind: 'cannot make' as const, folder, code });
      };
      try {
        disk.makeFolder(aside);
        const bytes = new TextEncoder().encode(boatText);
        const failed = replaceFile(disk, path.join(aside, 'boat.json'), bytes);
        if (failed) return cannot(failed.code);
        const keeping = { ...keepingOf(aside), finally: place };
        forgetMarks(keeping);
        const saved = append(newShelf(keeping), drafts);
        if (!saved.ok) {
          const [first] = saved.troubles;
          if (first?.kind === 'not saved') return cannot(first.code);
          removeAll(disk, aside);
          return saved;
        }
        if (isThere(disk, place)) disk.removeFolder(place);
        disk.rename(aside, place);
        disk.syncFolder(path.dirname(place));
        return saved;
      } catch (error) {
        return cannot(codeOf(error));
      }
    },
  });
}

/** What this laptop once wrote to a folder of that name went with it, and is not missing in the new one. */
function forgetMarks({ disk, state, finally: place = '' }: Keeping): void {
  for (const { writer } of marksOf(disk, state, placeOf(place))) removeMark(disk, state, writer);
}

/** What keeps a boat from being made here; null where nothing stands there, or an empty folder. */
function whatIsThere(disk: Disk, place: string, folder: string): Trouble | null {
  try {
    if (!disk.isFolder(place)) return { kind: 'cannot make', folder, code: 'EEXIST' };
    return disk.list(place).length === 0 ? null : { kind: 'folder not empty', folder };
  } catch (error) {
    const code = codeOf(error);
    return code === 'ENOENT' ? null : { kind: 'cannot make', folder, code };
  }
}

/** What a power cut left of an earlier attempt is not touched: it could be anything. */
function freeName(disk: Disk, name: string): string {
  for (let n = 1; ; n += 1) {
    const free = n === 1 ? name : `${name}-${n}`;
    if (!isThere(disk, free)) return free;
  }
}

function isThere(disk: Disk, place: string): boolean {
  try {
    disk.facts(place);
    return true;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Best effort: what failed to be written may fail to be removed, and stands beside the place, not in it. */
function removeAll(disk: Disk, folder: string): void {
  try {
    for (const name of disk.list(folder)) {
      const inside = path.join(folder, name);
      if (disk.isFolder(inside)) removeAll(disk, inside);
      else disk.remove(inside);
    }
    disk.removeFolder(folder);
  } catch (error) {
    codeOf(error);
  }
}
