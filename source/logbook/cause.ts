import type { Line } from './line.ts';

/** One entry with the line it was read from. */
export type Sound = Extract<Line, { how: 'entry' }>;

/** Cause before effect: by Lamport count, then writer, then the writer's own number; forks of one id by checksum. */
export function byCause(a: Sound, b: Sound): number {
  const x = a.frame;
  const y = b.frame;
  if (x.lc !== y.lc) return x.lc - y.lc;
  if (x.writer !== y.writer) return x.writer < y.writer ? -1 : 1;
  return x.n - y.n || x.crc - y.crc;
}
