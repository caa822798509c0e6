import { MS_A_DAY } from './time.ts';

/** Whether the newest look is too old to count: more than 3 intervals, or an interval and 10 days, whichever is less (model 1). Never without an interval. */
export function isStale(everyDays: number | undefined, lookedAt: number, at: number): boolean {
  if (everyDays === undefined) return false;
  return at - lookedAt > Math.min(3 * everyDays, everyDays + 10) * MS_A_DAY;
}
