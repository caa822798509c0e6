import { always, type Latest } from './latest.ts';
import type { Passages } from './passages.ts';

const MS_A_DAY = 86_400_000;

/** The end of a date, UTC: a dated thing fails then (model 5). */
export function endOfDate(expires: string): number {
  return Date.parse(`${expires}T00:00:00Z`) + MS_A_DAY;
}

/** The latest departures after which the date has not ended by the end of the stretch. */
export function datedLatest(expires: string, passages: Passages): Latest {
  const { count, now, hours, reserveDays } = passages;
  const leftHours = ((endOfDate(expires) - now) * 24) / MS_A_DAY;
  const latest = always(count);
  for (let i = 0; i < count; i += 1) {
    const room = leftHours - hours[i]! - 24 * reserveDays;
    latest[i] = room < 0 ? -Infinity : room;
  }
  return latest;
}
