import { crc32 } from 'node:zlib';
import type { Sound } from '../../source/logbook/cause.ts';
import type { LogFile } from '../../source/logbook/chain.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { type Line, readLine, writeLine } from '../../source/logbook/line.ts';

/** CRC-32 as the program is given it. */
export const crcOf = (bytes: Uint8Array | string): number => crc32(bytes);

/** A laptop that keeps its log in memory: it numbers and chains its lines, and counts on from whatever it has heard of. */
export interface Laptop {
  readonly writer: string;
  readonly lines: Line[];
  /** Their bytes, each with its LF. */
  readonly bytes: Uint8Array[];
  write(draft: Draft, rec?: string): Sound;
  hear(other: Laptop): void;
  file(): LogFile;
  /** Another laptop that goes on under the same writer id, as a cloned disk does. */
  clone(): Laptop;
}

export function aLaptop(writer: string, from?: Laptop): Laptop {
  const lines: Line[] = [...(from?.lines ?? [])];
  const bytes: Uint8Array[] = [...(from?.bytes ?? [])];
  let last = lines.findLast((line) => line.how === 'entry')?.frame ?? { n: 0, crc: '00000000', lc: 0 };
  let highest = last.lc;
  const laptop: Laptop = {
    writer,
    lines,
    bytes,
    write: ({ kind, at, by, key, ...fields }, rec = at) => {
      highest += 1;
      const frame = { v: 1, id: `${writer}-${last.n + 1}`, p: last.crc, lc: highest };
      const line = writeLine({ ...frame, at, rec, by, kind, key, ...fields }, crcOf);
      const read = readLine(line.bytes.subarray(0, -1), crcOf);
      if (read.how !== 'entry') throw new Error(`a draft no log would take: ${read.text}`);
      lines.push(read);
      bytes.push(line.bytes);
      last = read.frame;
      return read.frame;
    },
    hear: (other) => {
      for (const { frame } of other.lines) if (frame && frame.lc > highest) highest = frame.lc;
    },
    file: () => ({ name: `log/${writer}.ndjson`, writer, lines }),
    clone: () => aLaptop(writer, laptop),
  };
  return laptop;
}

/** A remark, for where it does not matter what is written. */
export function aRemark(text: string, at = '2026-02-03T07:42:00Z'): Draft {
  return { kind: 'remark', at, text };
}
