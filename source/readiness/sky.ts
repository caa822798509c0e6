import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import { type Daylight, daylightsBetween, sunOn } from '../passage/sun.ts';

/** The dark hours along the departures, where she leaves from. */
export interface Sky {
  /** From sunset to sunrise, ms since 1970 UTC, cut to the hours asked for; oldest first. */
  readonly nights: readonly Daylight[];
  /** Where the sun does not cross the horizon at the first of them: it stays up, or down. */
  readonly sun: 'rises and sets' | 'does not set' | 'does not rise';
}

/** Null where nobody said where she lies or leaves from. */
export function skyAlong(
  boat: Boat,
  { passage, anchorage }: Condition,
  from: number,
  to: number,
): Sky | null {
  const lies = boat.anchorages.find(({ id }) => id === anchorage)?.at;
  const place = lies ?? passage?.legs[0]?.from;
  if (place === undefined) return null;
  const today = sunOn(from, place);
  return {
    nights: between(daylightsBetween(from, to, place), from, to),
    sun: today === 'up' ? 'does not set' : today === 'down' ? 'does not rise' : 'rises and sets',
  };
}

/** What the days leave of the time. */
function between(days: readonly Daylight[], from: number, to: number): readonly Daylight[] {
  const nights: Daylight[] = [];
  let dark = from;
  for (const day of days) {
    if (day.from > dark) nights.push({ from: dark, to: Math.min(day.from, to) });
    dark = Math.max(dark, day.to);
  }
  return dark < to ? [...nights, { from: dark, to }] : nights;
}
