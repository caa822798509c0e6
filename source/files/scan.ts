import { isUtf8 } from 'node:buffer';
import type { Crc32, Line } from '../logbook/line.ts';
import { mostLineBytes, readLine, readText, readTexts } from '../logbook/line.ts';
import type { Disk } from './disk.ts';

/** What was read: whole lines, and what stands after the last LF (null when nothing does). */
export interface Scan {
  readonly lines: readonly Line[];
  /** Where the whole lines end: the next scan goes on from here. */
  readonly end: number;
  readonly tail: Line | null;
  /** It was given up: so much of it is no log that the rest is not worth the memory. */
  readonly givenUp: boolean;
}

/** A power cut damages a few lines. With more than this, most likely another file has got in the place of a log. */
export const mostJunkLines = 100_000;

/** Read at once: large enough for few system calls, small enough that a long log never stands in memory as one piece. */
const chunkBytes = 256 * 1024;
/** A character of a text takes at most so many bytes in UTF-8. */
const mostCharacterBytes = 3;

/** Reads the lines of an open file from a byte position to its end. A line over the limit is passed over without being held. */
export function scan(disk: Disk, file: number, from: number, crc32: Crc32): Scan {
  const lines: Line[] = [];
  const buffer = Buffer.allocUnsafe(chunkBytes + mostLineBytes + 1);
  let held = 0;
  let end = from;
  let at = from;
  let junk = 0;
  for (;;) {
    const got = disk.read(file, buffer.subarray(held, held + chunkBytes), at);
    if (got === 0) break;
    const filled = held + got;
    const whole = buffer.subarray(0, filled).lastIndexOf('\n') + 1;
    if (whole > 0) {
      junk = readLines(buffer.subarray(0, whole), crc32, lines, junk);
      end = at + whole - held;
      if (junk > mostJunkLines) return { lines, end, tail: null, givenUp: true };
    }
    at += got;
    held = Math.min(filled - whole, mostLineBytes + 1);
    buffer.copyWithin(0, whole, whole + held);
  }
  const tail = held > 0 ? readLine(buffer.subarray(0, held), crc32) : null;
  return { lines, end, tail, givenUp: false };
}

/** Neither an entry nor one changed by hand. */
function isJunk(line: Line): boolean {
  return line.frame === null && line.how !== 'edited';
}

/** Lines decoded together are read several times faster than one by one. Gives how much is junk by then; it ends where that is too much. */
function readLines(bytes: Buffer, crc32: Crc32, into: Line[], junk: number): number {
  const text = isUtf8(bytes) ? bytes.toString('utf8') : null;
  let found = junk;
  const take = (line: Line) => {
    if (isJunk(line)) found += 1;
    into.push(line);
  };
  const together = text === null ? null : readTexts(text, crc32);
  if (together) {
    for (const line of together) take(line);
    return found;
  }
  const whole = text ?? bytes;
  for (let start = 0, stop = 0; start < whole.length && found <= mostJunkLines; start = stop + 1) {
    stop = whole.indexOf('\n', start);
    take(
      text === null ? readLine(bytes.subarray(start, stop), crc32) : lineIn(text.slice(start, stop), crc32),
    );
  }
  return found;
}

function lineIn(text: string, crc32: Crc32): Line {
  const fits = text.length * mostCharacterBytes <= mostLineBytes;
  return (fits ? readText(text, crc32) : null) ?? readLine(Buffer.from(text), crc32);
}
