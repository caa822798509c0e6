import type { Entry } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import { itemOf } from './past.ts';
import { MS_AN_HOUR } from './time.ts';

/** "Eight o'clock", typed a little before eight, is not the future. Judgement, no source. */
const AHEAD_MS = MS_AN_HOUR;

/**
 * A trouble for every entry typed before it happened, with the hours it is ahead, of those typed by the moment. One put beyond the moment
 * by a slip is so told, although it is not seen.
 */
export function futureTroubles(entries: readonly Entry[], moment: number): readonly Trouble[] {
  const troubles: Trouble[] = [];
  for (const entry of entries) {
    const { id, at, rec } = entry;
    // UTC instants sort as text, to the second: the quick way past nearly all.
    if (at <= rec) continue;
    const typed = Date.parse(rec);
    const ahead = Date.parse(at) - typed;
    if (ahead <= AHEAD_MS || typed > moment) continue;
    const facts = {
      entry: id,
      at,
      item: itemOf(entry) ?? entry.kind,
      value: ahead / MS_AN_HOUR,
      unit: 'h',
      than: 0,
    };
    troubles.push({ kind: 'odd reading', ...facts, why: 'in the future' });
  }
  return troubles;
}
