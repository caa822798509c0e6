import { getTimes } from 'suncalc';
import type { Position } from './distance.ts';

const MS_A_DAY = 86_400_000;

/** A time of daylight, ms since 1970 UTC. */
export interface Daylight {
  readonly from: number;
  readonly to: number;
}

/** Sunrise and sunset of the solar day at an instant; 'up' or 'down' where the sun does not cross the horizon that day. */
export function sunOn(at: number, [latitude, longitude]: Position): Daylight | 'up' | 'down' {
  const { sunrise, sunset, alwaysUp } = getTimes(new Date(at), latitude, longitude);
  if (sunrise === null || sunset === null) return alwaysUp ? 'up' : 'down';
  return { from: sunrise.getTime(), to: sunset.getTime() };
}

/** Every time of daylight that touches `from`..`to`, oldest first; days on which the sun does not set are whole. */
export function daylightsBetween(from: number, to: number, place: Position): readonly Daylight[] {
  const days: Daylight[] = [];
  for (let noon = from - MS_A_DAY; noon <= to + MS_A_DAY; noon += MS_A_DAY) {
    const sun = sunOn(noon, place);
    if (sun === 'down') continue;
    const day = sun === 'up' ? { from: noon - MS_A_DAY / 2, to: noon + MS_A_DAY / 2 } : sun;
    if (day.to > from && day.from < to) days.push(day);
  }
  return days;
}
