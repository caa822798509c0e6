import { type Boat, engineOf } from '../boat/boat.ts';
import type { Service } from '../boat/service.ts';
import type { Condition } from '../condition/condition.ts';
import { always, type Latest } from './latest.ts';
import type { Passages } from './passages.ts';

const MS_A_DAY = 86_400_000;

/** When a service falls due. Null where it does not go by that measure, or was never done on record. */
export interface Due {
  readonly engine: string | null;
  /** By the engine's continuous hours. */
  readonly hours: number | null;
  /** Engine hours now, as last read; null before any reading. */
  readonly nowHours: number | null;
  /** Days since the meter was read: the engine has gone on at its waiting hours a day. */
  readonly unreadDays: number;
  /** By the calendar, ms since 1970 UTC. */
  readonly on: number | null;
}

export function dueOf(boat: Boat, service: Service, condition: Condition): Due {
  const engine = engineOf(boat, service.engine);
  const record = engine === null ? undefined : condition.engines.get(engine);
  const last = condition.services.get(service.id)!.done.at(-1);
  const byHours = service.everyHours !== undefined && last !== undefined && last.hours !== null;
  const byMonths = service.everyMonths !== undefined && last !== undefined;
  return {
    engine,
    hours: byHours ? last.hours! + service.everyHours! : null,
    nowHours: record?.hours ?? null,
    unreadDays: record?.readAt == null ? 0 : (condition.at - record.readAt) / MS_A_DAY,
    on: byMonths ? monthsLater(last.at, service.everyMonths!) : null,
  };
}

/** The latest departures at which no grace is run out by the end of the stretch (model 5): hours or months, whichever first. Done now, it starts anew. */
export function serviceLatest(service: Service, due: Due, done: boolean, passages: Passages): Latest {
  const { count, now, hours, reserveDays } = passages;
  const latest = always(count);
  if (due.hours !== null || (done && service.everyHours !== undefined)) {
    const left = done ? service.everyHours! : due.hours! - (due.nowHours ?? 0);
    const motored = passages.motoring.get(due.engine ?? '');
    const aDay = passages.waiting.get(due.engine ?? '');
    for (let i = 0; i < count; i += 1) {
      const u = aDay?.[i] ?? 0;
      const room =
        left + service.graceHours - (motored?.[i] ?? 0) - u * (reserveDays + (done ? 0 : due.unreadDays));
      if (room < 0) latest[i] = -Infinity;
      else if (u > 0) latest[i] = (24 * room) / u;
    }
  }
  if (due.on !== null && !done) {
    const leftHours = (due.on + service.graceDays * MS_A_DAY - now) / (MS_A_DAY / 24);
    for (let i = 0; i < count; i += 1) {
      const room = leftHours - hours[i]! - 24 * reserveDays;
      latest[i] = Math.min(latest[i]!, room < 0 ? -Infinity : room);
    }
  }
  return latest;
}

/** The same day of the month so many months on, UTC; the month's last day where it has no such day. */
function monthsLater(at: number, months: number): number {
  const from = new Date(at);
  const first = Date.UTC(from.getUTCFullYear(), from.getUTCMonth() + Math.round(months), 1);
  const month = new Date(first);
  const lastDay = new Date(Date.UTC(month.getUTCFullYear(), month.getUTCMonth() + 1, 0)).getUTCDate();
  return first + (Math.min(from.getUTCDate(), lastDay) - 1) * MS_A_DAY + (at % MS_A_DAY);
}
