import { chainStart } from '../logbook/chain.ts';
import type { Draft, Entry } from '../logbook/entries.ts';
import { type Line, mostLineBytes, readText, writeLine } from '../logbook/line.ts';
import { lineVersion } from '../logbook/upgrades.ts';
import { assert, bad, good, type Result } from '../trouble.ts';
import { lastFrame } from './own-writer.ts';
import type { Shelf } from './shelf.ts';

/** Entries as they will stand at the end of a writer's file: in one write, all or none. */
export interface Batch {
  readonly entries: readonly Entry[];
  readonly lines: readonly Line[];
  /** All lines, each with its LF. */
  readonly bytes: Uint8Array;
}

/** The next lines of a writer. Drafts whose `key` is already in the log are passed over. Not ok where an entry is longer than a line may be. */
export function batchOf(shelf: Shelf, writer: string, drafts: readonly Draft[]): Result<Batch> {
  const { crc32, now } = shelf.keeping;
  const rec = new Date(now()).toISOString();
  const keys = new Set<string>();
  const entries: Entry[] = [];
  const lines: Line[] = [];
  const parts: Uint8Array[] = [];
  let { n, crc } = lastFrame(shelf, writer) ?? { n: 0, crc: chainStart };
  for (const { kind, at, by, key, ...fields } of drafts) {
    if (key !== undefined && (shelf.keys.has(key) || keys.has(key))) continue;
    if (key !== undefined) keys.add(key);
    n += 1;
    const lc = shelf.highest + lines.length + 1;
    const frame = { v: lineVersion, id: `${writer}-${n}`, p: crc, lc };
    const written = writeLine({ ...frame, at, rec, by, kind, key, ...fields }, crc32);
    if (written.bytes.length > mostLineBytes + 1) {
      const expected = `an entry of at most ${mostLineBytes} bytes`;
      return bad({ kind: 'wrong entry', field: 'text', value: written.bytes.length, expected });
    }
    const line = readText(written.text, crc32);
    assert(line?.how === 'entry', 'what is written can be read');
    entries.push(line.frame);
    lines.push(line);
    parts.push(written.bytes);
    crc = written.crc;
  }
  return good({
    entries,
    lines,
    bytes: parts.length === 1 ? (parts[0] as Uint8Array) : Buffer.concat(parts),
  });
}
