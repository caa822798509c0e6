import { getTimes } from 'suncalc';
import type { Position } from './distance.ts';

const MS_A_DAY = 86_400_000;

/** A time of daylight, ms since 1970 UTC. */
export interface Daylight {
  readonly from: number;
  readonly to: number;
}

/** Days on which the sun does not set follow each other within the half minute by which solar noon moves from day to day. */
const APART_MS = 60_000;

/** Sunrise and sunset of the solar day at an instant; 'up' or 'down' where the sun does not cross the horizon that day. */
export function sunOn(at: number, place: Position): Daylight | 'up' | 'down' {
  return solarDay(at, place).sun;
}

/** Every time of daylight that touches `from`..`to`, oldest first; days on which the sun does not set are one, from solar midnight to solar midnight. */
export function daylightsBetween(from: number, to: number, place: Position): readonly Daylight[] {
  const days: Daylight[] = [];
  for (let at = from - MS_A_DAY; at <= to + MS_A_DAY; at += MS_A_DAY) {
    const { sun, noon } = solarDay(at, place);
    if (sun === 'down') continue;
    const day = sun === 'up' ? { from: noon - MS_A_DAY / 2, to: noon + MS_A_DAY / 2 } : sun;
    const last = days.at(-1);
    if (last && day.from <= last.to + APART_MS) days[days.length - 1] = { from: last.from, to: day.to };
    else days.push(day);
  }
  return days.filter((day) => day.to > from && day.from < to);
}

function solarDay(
  at: number,
  [latitude, longitude]: Position,
): { readonly sun: Daylight | 'up' | 'down'; readonly noon: number } {
  const { sunrise, sunset, alwaysUp, solarNoon } = getTimes(new Date(at), latitude, longitude);
  const noon = solarNoon.getTime();
  if (sunrise === null || sunset === null) return { sun: alwaysUp ? 'up' : 'down', noon };
  return { sun: { from: sunrise.getTime(), to: sunset.getTime() }, noon };
}
