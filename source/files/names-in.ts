import { codeOf, type Disk } from './disk.ts';

/** What a folder holds, sorted. One that is not there or cannot be read has nothing in it; a symlink is not followed. */
export function namesIn(disk: Disk, folder: string): readonly string[] {
  try {
    return disk.isFolder(folder) ? disk.list(folder).toSorted() : [];
  } catch (error) {
    codeOf(error);
    return [];
  }
}
