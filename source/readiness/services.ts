import { UTCDateMini } from '@date-fns/utc/date/mini';
import { addMonths } from 'date-fns/addMonths';
import { type Boat, engineOf } from '../boat/boat.ts';
import type { Service } from '../boat/service.ts';
import type { Condition } from '../condition/condition.ts';
import type { Passages } from './passages.ts';
import type { Room } from './room.ts';

const MS_A_DAY = 86_400_000;
const MS_AN_HOUR = 3_600_000;

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
    on: byMonths ? monthsAfter(last.at, service.everyMonths!) : null,
  };
}

/** The same as it is told: the hours of the meter at which it is due, the instant, and the engine hours to go, less than none where it is overdue. */
export function dueFacts(
  boat: Boat,
  service: Service,
  condition: Condition,
): { readonly dueHours: number | null; readonly dueOn: number | null; readonly dueInHours: number | null } {
  const { hours, nowHours, on } = dueOf(boat, service, condition);
  return {
    dueHours: hours,
    dueOn: on,
    dueInHours: hours === null || nowHours === null ? null : hours - nowHours,
  };
}

/** A month in the mean, over the 400 years in which the calendar repeats itself. */
const DAYS_A_MONTH = 30.436875;

/** By the calendar; of a part of a month so many days. */
function monthsAfter(at: number, months: number): number {
  const whole = Math.floor(months);
  return addMonths(new UTCDateMini(at), whole).getTime() + (months - whole) * DAYS_A_MONTH * MS_A_DAY;
}

/** What is left to the end of its grace (model 5): in engine hours, and in hours by the calendar. Done now, the hours start anew and the calendar is of no account. */
export function serviceRooms(service: Service, due: Due, done: boolean, passages: Passages): readonly Room[] {
  const rooms: Room[] = [];
  if (due.hours !== null || (done && service.everyHours !== undefined)) {
    const left = done ? service.everyHours! : due.hours! - (due.nowHours ?? 0);
    rooms.push(engineHoursLeft(left + service.graceHours, done ? 0 : due.unreadDays, due.engine, passages));
  }
  if (due.on !== null && !done) rooms.push(timeLeft(due.on + service.graceDays * MS_A_DAY, passages));
  return rooms;
}

function engineHoursLeft(left: number, unreadDays: number, engine: string | null, passages: Passages): Room {
  const { count, reserveDays, waiting } = passages;
  const aDay = engine === null ? new Float64Array(count) : waiting.get(engine)!;
  return {
    at0: aDay.map((hours) => left - hours * (reserveDays + unreadDays)),
    anHour: aDay.map((hours) => hours / 24),
    anEngineHour: engine === null ? null : new Float64Array(count).fill(1),
    engines: engine === null ? [] : [engine],
  };
}

/** Hours from the end of the stretch to an instant, ms since 1970 UTC. */
export function timeLeft(until: number, { count, now, hours, reserveDays }: Passages): Room {
  const left = (until - now) / MS_AN_HOUR - 24 * reserveDays;
  return {
    at0: hours.map((under) => left - under),
    anHour: new Float64Array(count).fill(1),
    anEngineHour: null,
    engines: [],
  };
}
