import type { LogTrouble } from '../trouble.ts';
import type { Entry } from './entries.ts';

/** Setting a clock right moves it by minutes; more than this backwards is told. Common practice, no source. */
const mostBackMs = 10 * 60_000;
/** A clock that leapt further than this between two entries was wrong before or is wrong now, or nobody wrote for over a year: told. */
const mostLeapMs = 400 * 86_400_000;
const yearAndMonth = 'YYYY-MM'.length;

/**
 * Tells where a laptop's clock went back or leapt between two of its entries, given in the order of its numbers.
 * Struck entries left out, striking the one that is wrong ends it.
 */
export function clockTroubles(entries: readonly Entry[]): readonly LogTrouble[] {
  const troubles: LogTrouble[] = [];
  const before = new Map<string, string>();
  for (const { writer, id, at, rec } of entries) {
    const why = moved(before.get(writer) ?? rec, rec);
    if (why) troubles.push({ kind: 'clock', entry: id, at, rec, why });
    before.set(writer, rec);
  }
  return troubles;
}

function moved(before: string, now: string): 'went back' | 'leapt' | null {
  const inOrder = now.length === before.length && now >= before;
  if (inOrder && now.slice(0, yearAndMonth) === before.slice(0, yearAndMonth)) return null;
  const ms = Date.parse(now) - Date.parse(before);
  if (ms < -mostBackMs) return 'went back';
  return ms > mostLeapMs ? 'leapt' : null;
}
