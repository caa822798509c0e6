import { wallOf } from '../maths/wall-clock.ts';
import { dayWords, momentWords } from '../words/say.ts';

const DAY_MS = 86_400_000;

/** A moment as short as it can be said beside another: `Sun 04:00` within six days, `Tue 10 Feb` within the year, else `31 Mar 2027`. */
export function soonWords(at: number, beside: number, zone: string): string {
  const [weekday, day, month, time] = momentWords(at, zone, at).split(' ');
  if (Math.abs(at - beside) < 6 * DAY_MS) return `${weekday} ${time}`;
  const whole = dayWords(at, zone);
  return whole.endsWith(dayWords(beside, zone).slice(-4)) ? `${weekday} ${day} ${month}` : whole;
}

/** How long ago by the calendar of the zone, for a look: `today`, `yesterday`, `5 days ago`. */
export function agoWords(at: number, now: number, zone: string): string {
  const dayOf = (instant: number) => Math.floor(wallOf(instant, zone) / DAY_MS);
  const days = dayOf(now) - dayOf(at);
  if (days < 1) return 'today';
  return days === 1 ? 'yesterday' : `${days} days ago`;
}
