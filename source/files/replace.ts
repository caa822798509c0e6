import path from 'node:path';
import { codeOf, type Disk } from './disk.ts';
import { readWhole } from './read-text.ts';

/** Why a file could not be replaced; the old one still stands then. */
export interface NotReplaced {
  readonly file: string;
  readonly code: string;
}

/**
 * Puts new bytes in the place of a file so that at every instant, power cuts included, either the old or the new one is there whole.
 * `backup` keeps the old bytes under `<file>.bak`, by the same way. Null once the new file and its name are on the disk.
 */
export function replaceFile(
  disk: Disk,
  file: string,
  bytes: Uint8Array,
  { backup = false }: { readonly backup?: boolean } = {},
): NotReplaced | null {
  try {
    if (backup) keepOld(disk, file);
    putInPlace(disk, file, bytes);
    return null;
  } catch (error) {
    return { file, code: codeOf(error) };
  }
}

function keepOld(disk: Disk, file: string): void {
  let old: Uint8Array;
  try {
    old = readBytes(disk, file);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return;
    throw error;
  }
  putInPlace(disk, `${file}.bak`, old);
}

function putInPlace(disk: Disk, file: string, bytes: Uint8Array): void {
  const aside = `${file}.new`;
  removeLeftover(disk, aside);
  try {
    writeAside(disk, aside, bytes);
    disk.rename(aside, file);
  } catch (error) {
    const code = codeOf(error);
    /** On a full disk it takes the room that is wanted. Where this fails too, the next attempt removes it. */
    attempt(() => removeLeftover(disk, aside));
    throw Object.assign(new Error(`${file} was not replaced`, { cause: error }), { code });
  }
  disk.syncFolder(path.dirname(file));
}

function writeAside(disk: Disk, aside: string, bytes: Uint8Array): void {
  const opened = disk.open(aside, 'new');
  try {
    writeAll(disk, opened, bytes);
    disk.sync(opened);
  } finally {
    disk.close(opened);
  }
}

function attempt(action: () => void): void {
  try {
    action();
  } catch (error) {
    codeOf(error);
  }
}

/** What a power cut left behind in an earlier attempt. */
function removeLeftover(disk: Disk, aside: string): void {
  try {
    disk.remove(aside);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
  }
}

function writeAll(disk: Disk, opened: number, bytes: Uint8Array): void {
  for (let done = 0; done < bytes.length; ) {
    const taken = disk.write(opened, bytes.subarray(done), done);
    if (taken === 0) throw Object.assign(new Error('the disk takes no more'), { code: 'ENOSPC' });
    done += taken;
  }
  if (disk.openFacts(opened).bytes !== bytes.length) {
    throw Object.assign(new Error('the disk lost part of what was written'), { code: 'EIO' });
  }
}

function readBytes(disk: Disk, file: string): Uint8Array {
  const opened = disk.open(file, 'read');
  try {
    return readWhole(disk, opened, disk.openFacts(opened).bytes);
  } finally {
    disk.close(opened);
  }
}
