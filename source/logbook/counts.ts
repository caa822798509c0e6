import type { LogTrouble } from '../trouble.ts';
import type { LogFile } from './chain.ts';

/** A leap of the Lamport count beyond this is a fault or an attack, not a long log: told, and not followed. */
export const mostLeap = 1e6;

/** The highest Lamport count a new entry has to follow. */
export function highestCount(files: readonly LogFile[]): number {
  let highest = 0;
  for (const count of sortedCounts(files)) {
    if (count - highest > mostLeap) break;
    highest = count;
  }
  return highest;
}

/** The first line whose count leaps away from all counts below it. */
export function leapTroubles(files: readonly LogFile[]): readonly LogTrouble[] {
  const highest = highestCount(files);
  const troubles: LogTrouble[] = [];
  for (const { name: file, lines } of files) {
    for (const [i, { frame }] of lines.entries()) {
      if (frame && frame.lc > highest)
        troubles.push({ kind: 'count leap', place: { file, line: i + 1 }, lc: frame.lc });
    }
  }
  return troubles.slice(0, 1);
}

function sortedCounts(files: readonly LogFile[]): Float64Array {
  const counts: number[] = [];
  let highest = 0;
  for (const { lines } of files) {
    for (const { frame } of lines) {
      if (!frame) continue;
      counts.push(frame.lc);
      if (frame.lc > highest) highest = frame.lc;
    }
  }
  return highest <= mostLeap ? Float64Array.of(highest) : Float64Array.from(counts).sort();
}
