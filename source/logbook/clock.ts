import type { LogTrouble } from '../trouble.ts';
import type { Entry } from './entries.ts';

/** Setting a clock right moves it by minutes; more than this backwards is told. Common practice, no source. */
const mostBackMs = 10 * 60_000;
/** A clock that leapt further than this between two entries was wrong before or is wrong now, or nobody wrote for over a year: told. */
const mostLeapMs = 400 * 86_400_000;

/** Tells where a laptop's clock went back or leapt between two of its entries that stand. Striking the entry that is wrong ends it. */
export function clockTroubles(entries: readonly Entry[]): readonly LogTrouble[] {
  const troubles: LogTrouble[] = [];
  for (const own of Map.groupBy(entries, ({ writer }) => writer).values()) {
    let before: number | null = null;
    for (const { id, at, rec } of own.toSorted((a, b) => a.n - b.n)) {
      const now = Date.parse(rec);
      const why = before === null ? null : moved(now - before);
      if (why) troubles.push({ kind: 'clock', entry: id, at, rec, why });
      before = now;
    }
  }
  return troubles;
}

function moved(ms: number): 'went back' | 'leapt' | null {
  if (ms < -mostBackMs) return 'went back';
  return ms > mostLeapMs ? 'leapt' : null;
}
