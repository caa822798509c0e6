import type { Crc32, Line } from '../logbook/line.ts';
import { mostLineBytes, readLine } from '../logbook/line.ts';
import type { Disk } from './disk.ts';

/** What was read: whole lines, and what stands after the last LF (null when nothing does). */
export interface Scan {
  readonly lines: readonly Line[];
  /** Where the whole lines end: the next scan goes on from here. */
  readonly end: number;
  readonly tail: Line | null;
}

/** Read at once: large enough for few system calls, small enough that a long log never stands in memory as one piece. */
const chunkBytes = 256 * 1024;
const lf = 0x0a;

/** Reads the lines of an open file from a byte position to its end. A line over the limit is passed over without being held. */
export function scan(disk: Disk, file: number, from: number, crc32: Crc32): Scan {
  const lines: Line[] = [];
  const buffer = Buffer.alloc(chunkBytes + mostLineBytes + 1);
  let held = 0;
  let end = from;
  let at = from;
  for (;;) {
    const got = disk.read(file, buffer.subarray(held, held + chunkBytes), at);
    if (got === 0) break;
    const filled = held + got;
    let start = 0;
    for (let stop = buffer.indexOf(lf, held); stop >= 0 && stop < filled; stop = buffer.indexOf(lf, start)) {
      lines.push(readLine(buffer.subarray(start, stop), crc32));
      start = stop + 1;
      end = at + start - held;
    }
    at += got;
    held = Math.min(filled - start, mostLineBytes + 1);
    buffer.copyWithin(0, start, start + held);
  }
  return { lines, end, tail: held > 0 ? readLine(buffer.subarray(0, held), crc32) : null };
}
