import type { Boat } from '../boat/boat.ts';
import type { DatedRecord } from './condition.ts';
import type { Past } from './past.ts';

/** Until when each dated thing is good: the last date entered, else the boat file's. */
export function datedRecords(boat: Boat, past: Past): ReadonlyMap<string, DatedRecord> {
  return new Map(
    boat.dated.map(({ id, expires }) => {
      const last = past.of('dated', id).at(-1);
      return [id, { expires: last?.entry.expires ?? expires ?? null, lookedAt: last?.at ?? null }];
    }),
  );
}
