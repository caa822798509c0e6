import type { Boat } from '../boat/boat.ts';
import type { Check } from '../boat/check.ts';
import type { EntryOf } from '../logbook/entries.ts';
import type { CheckRecord } from './condition.ts';
import type { Past, Timed } from './past.ts';

/** The answers to each check, and what has voided the last one since: work on what unsettles it, or an arrival. */
export function checkRecords(boat: Boat, past: Past): ReadonlyMap<string, CheckRecord> {
  const arrival = past.of('arrived').at(-1)?.order ?? -1;
  return new Map(
    boat.checks.map((check) => {
      const told = past.of('check', check.id);
      const last = told.at(-1);
      return [
        check.id,
        {
          answers: told.map(({ at, entry }) => answerOf(check, at, entry)),
          unsettledBy: workSince(boat, past, check.id, last?.order ?? -1),
          madeSinceArrival: last !== undefined && last.order > arrival,
          lookedAt: last?.at ?? null,
        },
      ];
    }),
  );
}

function answerOf(check: Check, at: number, { ok, value }: EntryOf<'check'>): CheckRecord['answers'][number] {
  return { at, ok: ok ?? judged(check, value), value: value ?? null };
}

/** Whether a number lies inside the check's limits, both of them good; null with no limits to judge by. */
function judged({ atLeast, atMost }: Check, value: number | undefined): boolean | null {
  if (value === undefined || (atLeast === undefined && atMost === undefined)) return null;
  return value >= (atLeast ?? Number.NEGATIVE_INFINITY) && value <= (atMost ?? Number.POSITIVE_INFINITY);
}

/** The newest work after a place in the log on anything that unsettles the check. */
function workSince(boat: Boat, past: Past, check: string, order: number): CheckRecord['unsettledBy'] {
  let newest: { item: string; work: Timed } | null = null;
  for (const { id, unsettles } of [...boat.anodes, ...boat.services]) {
    if (!unsettles.includes(check)) continue;
    const work = past.about(id).findLast(isWork);
    if (work !== undefined && work.order > (newest?.work.order ?? order)) newest = { item: id, work };
  }
  return newest && { item: newest.item, at: newest.work.at };
}

function isWork({ entry }: Timed): boolean {
  return entry.kind === 'job' || entry.kind === 'renew' || entry.kind === 'service';
}
