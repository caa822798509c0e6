import { type Crc32, readLine } from './line.ts';
import { splitLines } from './split-lines.ts';

const lf = 0x0a;

/**
 * The union of two copies of one log file that have gone different ways: every line of either once, by number and then by bytes, damaged lines last.
 * The answer does not depend on which comes first, and the union with either of them again is the same bytes.
 */
export function unionOfLogs(a: Uint8Array, b: Uint8Array, crc32: Crc32): Uint8Array {
  const lines = [...splitLines(a), ...splitLines(b)].map((bytes) => ({
    bytes,
    n: readLine(bytes, crc32).frame?.n ?? Number.POSITIVE_INFINITY,
  }));
  lines.sort((x, y) => (x.n === y.n ? compareBytes(x.bytes, y.bytes) : x.n < y.n ? -1 : 1));
  const once = lines.filter(({ bytes }, i) => i === 0 || compareBytes(bytes, lines[i - 1]!.bytes) !== 0);
  return joined(once.map(({ bytes }) => bytes));
}

/** Whether a file is the beginning of another, or the same. */
export function isPrefix(short: Uint8Array, long: Uint8Array): boolean {
  return short.length <= long.length && compareBytes(short, long.subarray(0, short.length)) === 0;
}

function compareBytes(a: Uint8Array, b: Uint8Array): number {
  const shared = Math.min(a.length, b.length);
  for (let i = 0; i < shared; i += 1) {
    const difference = (a[i] as number) - (b[i] as number);
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}

function joined(lines: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(lines.reduce((sum, { length }) => sum + length + 1, 0)).fill(lf);
  let at = 0;
  for (const line of lines) {
    whole.set(line, at);
    at += line.length + 1;
  }
  return whole;
}
