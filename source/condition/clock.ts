import type { Entry } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import { itemOf } from './past.ts';
import { MS_A_DAY, MS_AN_HOUR } from './time.ts';

/** What a laptop's clock is let go back before it is said: zones and small corrections. The leap is that of log.md. Judgement, no source. */
const BACK_MS = MS_A_DAY;
const LEAP_MS = 400 * MS_A_DAY;
/** "Eight o'clock", typed a little before eight, is not the future. Judgement, no source. */
const AHEAD_MS = MS_AN_HOUR;

/**
 * Entries whose times cannot be right: a writer's clock that went back or leapt between one entry and its next, and entries typed
 * before they happened. Only what was typed or happened by the moment is told; an entry typed by then for later is told here, since it is
 * not seen otherwise.
 */
export function clockTroubles(entries: readonly Entry[], moment: number): readonly Trouble[] {
  const troubles: Trouble[] = [];
  const last = new Map<string, number>();
  for (const entry of inWritingOrder(entries)) {
    const typed = Date.parse(entry.rec);
    const happened = Date.parse(entry.at);
    const before = last.get(entry.writer);
    last.set(entry.writer, typed);
    if (typed > moment && happened > moment) continue;
    if (before !== undefined && typed < before - BACK_MS) troubles.push(clock(entry, 'went back'));
    else if (before !== undefined && typed > before + LEAP_MS) troubles.push(clock(entry, 'leapt'));
    if (happened > typed + AHEAD_MS) troubles.push(inFuture(entry, (happened - typed) / MS_AN_HOUR));
  }
  return troubles;
}

/** By writer and number; the log nearly always holds them so already. */
function inWritingOrder(entries: readonly Entry[]): readonly Entry[] {
  const last = new Map<string, number>();
  for (const { writer, n } of entries) {
    if (n < (last.get(writer) ?? 0)) return entries.toSorted((a, b) => a.n - b.n || (a.id < b.id ? -1 : 1));
    last.set(writer, n);
  }
  return entries;
}

function clock(entry: Entry, why: 'went back' | 'leapt'): Trouble {
  return { kind: 'clock', entry: entry.id, at: entry.at, rec: entry.rec, why };
}

function inFuture(entry: Entry, hours: number): Trouble {
  const item = itemOf(entry) ?? entry.kind;
  const facts = { entry: entry.id, at: entry.at, item, value: hours, unit: 'h', than: 0 };
  return { kind: 'odd reading', ...facts, why: 'in the future' };
}
