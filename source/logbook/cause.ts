import type { Entry } from './entries.ts';
import type { Frame } from './line.ts';

/** An entry with its place in its writer's chain. */
export type Sound = Entry & Frame;

/** Cause before effect: by Lamport count, then writer, then the writer's own number; forks of one id by checksum. */
export function byCause(a: Sound, b: Sound): number {
  if (a.lc !== b.lc) return a.lc - b.lc;
  if (a.writer !== b.writer) return a.writer < b.writer ? -1 : 1;
  if (a.n !== b.n) return a.n - b.n;
  return a.crc < b.crc ? -1 : a.crc > b.crc ? 1 : 0;
}
