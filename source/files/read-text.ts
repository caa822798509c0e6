import { bad, good, type Result } from '../trouble.ts';
import { codeOf, type Disk } from './disk.ts';

/** Reads a small text file whole. Symlinks, pipes and files beyond `mostBytes` are refused; bytes that are not UTF-8 are shown as U+FFFD. */
export function readTextFile(disk: Disk, file: string, mostBytes: number): Result<string> {
  const bytes = readSmallFile(disk, file, mostBytes);
  return bytes.ok ? good(new TextDecoder().decode(bytes.value)) : bytes;
}

/** The same for bytes. */
export function readSmallFile(disk: Disk, file: string, mostBytes: number): Result<Uint8Array> {
  try {
    if (!disk.facts(file).plain) return bad({ kind: 'not a plain file', file });
    const opened = disk.open(file, 'read');
    try {
      const { plain, bytes } = disk.openFacts(opened);
      if (!plain) return bad({ kind: 'not a plain file', file });
      if (bytes > mostBytes) return bad({ kind: 'file too large', file, bytes, most: mostBytes });
      return good(readWhole(disk, opened, bytes));
    } finally {
      disk.close(opened);
    }
  } catch (error) {
    return bad({ kind: 'cannot read', file, code: codeOf(error) });
  }
}

/** All bytes of an open file that was `size` long when looked at. */
export function readWhole(disk: Disk, opened: number, size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  let filled = 0;
  while (filled < size) {
    const got = disk.read(opened, bytes.subarray(filled), filled);
    if (got === 0) break;
    filled += got;
  }
  return bytes.subarray(0, filled);
}
