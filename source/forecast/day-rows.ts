import { instantOf, wallOf } from '../maths/wall-clock.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const MORNING = 6 * HOUR;
const EVENING = 18 * HOUR;
const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** A day or a night to type a forecast for; ms since 1970 UTC. */
export interface DayRow {
  readonly label: string;
  readonly from: number;
  readonly to: number;
}

/**
 * The days and nights from now on as broadcasts name them, in the person's zone: rest of today, tonight, tomorrow, tomorrow night, Thursday. They change at six,
 * morning and evening; a rest of less than an hour is left out and the next begins now.
 */
export function dayRows(now: number, timeZone: string, count: number): readonly DayRow[] {
  const wall = wallOf(now, timeZone);
  const today = Math.floor(wall / DAY) * DAY;
  const instant = (at: number) => instantOf(at, timeZone) ?? at - (wall - now);
  const changes = [
    today - DAY + EVENING,
    ...Array.from({ length: count + 3 }, (_, i) => today + MORNING + i * (EVENING - MORNING)),
  ];
  const first = changes.findLastIndex((at) => at <= wall + HOUR);
  return changes.slice(first, first + count).map((at, i) => ({
    label: labelOf(at, wall, today),
    from: i === 0 ? now : instant(at),
    to: instant(changes[first + i + 1]!),
  }));
}

function labelOf(change: number, wall: number, today: number): string {
  const days = Math.round((Math.floor(change / DAY) * DAY - today) / DAY);
  const isNight = change % DAY === EVENING;
  if (days < 0) return 'rest of the night';
  if (days === 0 && isNight) return 'tonight';
  if (days === 0) return change < wall ? 'rest of today' : 'today';
  const day = days === 1 ? 'tomorrow' : WEEKDAYS[new Date(change).getUTCDay()]!;
  return isNight ? `${day} night` : day;
}
