import { createHash } from 'node:crypto';
import path from 'node:path';
import { crc32 } from 'node:zlib';
import { codeOf, type Disk } from './disk.ts';
import { namesIn } from './names-in.ts';

/** How far this laptop has written under a writer id, and where: its last line, that line's checksum, and how long its file was then. */
export interface Mark {
  readonly writer: string;
  readonly machine: string;
  readonly segment: number;
  readonly n: number;
  readonly crc: string;
  readonly bytes: number;
  /** 16 hexadecimal digits that tell the boat folder written to from any other: see `placeOf`. */
  readonly place: string;
}

/**
 * Reads the mark of a writer; null where there is none, or none that can be believed. The mark stays outside the boat folder, so that a copy of the
 * folder on another laptop, or a second copy on this one, does not go on under the same writer id.
 */
export function readMark(disk: Disk, folder: string, writer: string): Mark | null {
  const bytes = new Uint8Array(markBytes + 1);
  try {
    const file = disk.open(markPath(folder, writer), 'read');
    try {
      return parse(new TextDecoder().decode(bytes.subarray(0, disk.read(file, bytes, 0))), writer);
    } finally {
      disk.close(file);
    }
  } catch (error) {
    codeOf(error);
    return null;
  }
}

/** The marks of all writers whose last entry went to the boat folder of that `place`. */
export function marksOf(disk: Disk, folder: string, place: string): readonly Mark[] {
  return namesIn(disk, folder).flatMap((name) => {
    const writer = /^([0-9a-z]{8})\.mark$/.exec(name)?.[1];
    const mark = writer === undefined ? null : readMark(disk, folder, writer);
    return mark?.place === place ? [mark] : [];
  });
}

/** Tells a boat folder by where it stands, as its path from the root. */
export function placeOf(boat: string): string {
  return createHash('sha256').update(path.resolve(boat)).digest('hex').slice(0, 16);
}

/** Always the same number of bytes in the same place, after the entries are on the disk and without a sync of its own: it may lag, never lead. */
export function writeMark(disk: Disk, folder: string, mark: Mark): void {
  const file = disk.open(markPath(folder, mark.writer), 'create or change');
  try {
    disk.write(file, new TextEncoder().encode(text(mark)), 0);
  } finally {
    disk.close(file);
  }
}

export function hasMark(disk: Disk, folder: string, writer: string): boolean {
  try {
    return disk.facts(markPath(folder, writer)).plain;
  } catch (error) {
    codeOf(error);
    return false;
  }
}

export function removeMark(disk: Disk, folder: string, writer: string): void {
  disk.remove(markPath(folder, writer));
}

/** Of fixed width, and closed by a checksum: one written over another by halves is not believed. */
function text({ writer, machine, segment, n, crc, bytes, place }: Mark): string {
  const segmentText = String(segment).padStart(4, '0');
  const [number, length] = [n, bytes].map((count) => String(count).padStart(12, '0'));
  const body = `hoveshort-mark 2 ${writer} ${machine} ${segmentText} ${number} ${crc} ${length} ${place}`;
  return `${body} ${crc32(body).toString(16).padStart(8, '0')}\n`;
}

const pattern =
  /^hoveshort-mark 2 ([0-9a-z]{8}) ([0-9a-f]{16}) (\d{4}) (\d{12}) ([0-9a-f]{8}) (\d{12}) ([0-9a-f]{16}) [0-9a-f]{8}\n$/;
const markBytes = text({
  writer: 'x'.repeat(8),
  machine: 'x'.repeat(16),
  segment: 1,
  n: 0,
  crc: '00000000',
  bytes: 0,
  place: 'x'.repeat(16),
}).length;

function parse(written: string, writer: string): Mark | null {
  const [, named, machine = '', segment, n, crc = '', bytes, place = ''] = pattern.exec(written) ?? [];
  if (named !== writer) return null;
  const mark = { writer, machine, segment: Number(segment), n: Number(n), crc, bytes: Number(bytes), place };
  return text(mark) === written ? mark : null;
}

function markPath(folder: string, writer: string): string {
  return path.join(folder, `${writer}.mark`);
}
