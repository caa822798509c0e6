import type { Entry } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import { itemOf } from './past.ts';
import { MS_A_DAY, MS_AN_HOUR } from './time.ts';

/** How far a clock may go back before it is said: small corrections. Judgement, no source. */
const BACK_MS = MS_A_DAY;
const LEAP_MS = 400 * MS_A_DAY;
/** "Eight o'clock", typed a little before eight, is not the future. Judgement, no source. */
const AHEAD_MS = MS_AN_HOUR;

/**
 * Entries whose times cannot be right: a writer's clock that went back or leapt between one entry and its next, and entries typed
 * before they happened. Only what was typed or had happened by the moment is told; so an entry put in the future by a slip is told
 * here although it is not seen.
 */
export function clockTroubles(entries: readonly Entry[], moment: number): readonly Trouble[] {
  const troubles: Trouble[] = [];
  for (const written of Map.groupBy(entries, ({ writer }) => writer).values()) {
    let before: string | undefined;
    for (const entry of inWritingOrder(written)) {
      const jump = before === undefined ? null : jumpOf(before, entry.rec);
      const ahead = hoursAhead(entry);
      before = entry.rec;
      if ((jump === null && ahead === null) || isYetToCome(entry, moment)) continue;
      const { id, at, rec } = entry;
      if (jump !== null) troubles.push({ kind: 'clock', entry: id, at, rec, why: jump });
      if (ahead !== null) troubles.push(inFuture(entry, ahead));
    }
  }
  return troubles;
}

function inWritingOrder(written: readonly Entry[]): readonly Entry[] {
  const isOrdered = written.every(({ n }, i) => i === 0 || written[i - 1]!.n < n);
  if (isOrdered) return written;
  const numbered = written.map((entry) => ({ n: entry.n, entry }));
  numbered.sort((a, b) => a.n - b.n || (a.entry.id < b.entry.id ? -1 : 1));
  return numbered.map(({ entry }) => entry);
}

function jumpOf(before: string, rec: string): 'went back' | 'leapt' | null {
  // UTC instants sort as text: the quick way past nearly all entries, which need no parsing then.
  if (rec >= before && rec.slice(0, 4) === before.slice(0, 4)) return null;
  const jump = Date.parse(rec) - Date.parse(before);
  if (jump < -BACK_MS) return 'went back';
  return jump > LEAP_MS ? 'leapt' : null;
}

function hoursAhead({ at, rec }: Entry): number | null {
  if (at <= rec) return null;
  const ahead = Date.parse(at) - Date.parse(rec);
  return ahead > AHEAD_MS ? ahead / MS_AN_HOUR : null;
}

function isYetToCome({ at, rec }: Entry, moment: number): boolean {
  return Date.parse(rec) > moment && Date.parse(at) > moment;
}

function inFuture(entry: Entry, hours: number): Trouble {
  const item = itemOf(entry) ?? entry.kind;
  const facts = { entry: entry.id, at: entry.at, item, value: hours, unit: 'h', than: 0 };
  return { kind: 'odd reading', ...facts, why: 'in the future' };
}
