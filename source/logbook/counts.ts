import type { LogTrouble } from '../trouble.ts';
import type { LogFile } from './chain.ts';

/** A leap of the Lamport count beyond this is a fault or an attack, not a long log: told, and not followed. */
export const mostLeap = 1e6;

/** The highest Lamport count a new entry has to follow. */
export function highestCount(files: readonly LogFile[]): number {
  const most = mostCountIn(files);
  if (most <= mostLeap) return most;
  const counts = files.flatMap(({ lines }) => lines.flatMap(({ frame }) => (frame ? [frame.lc] : [])));
  let highest = 0;
  for (const count of Float64Array.from(counts).sort()) {
    if (count - highest > mostLeap) break;
    highest = count;
  }
  return highest;
}

/** The first line whose count leaps away from all counts below it. */
export function leapTroubles(files: readonly LogFile[]): readonly LogTrouble[] {
  const highest = highestCount(files);
  if (mostCountIn(files) === highest) return [];
  const beyond = files.flatMap(({ name: file, lines }) =>
    lines.flatMap(({ frame }, i): LogTrouble[] =>
      frame && frame.lc > highest ? [{ kind: 'count leap', place: { file, line: i + 1 }, lc: frame.lc }] : [],
    ),
  );
  return beyond.slice(0, 1);
}

function mostCountIn(files: readonly LogFile[]): number {
  let most = 0;
  for (const { lines } of files) {
    for (const { frame } of lines) if (frame && frame.lc > most) most = frame.lc;
  }
  return most;
}
