import type { Boat } from '../boat/boat.ts';
import type { Condition, WeatherLook } from '../condition/condition.ts';
import { type WeatherAt, weatherAt } from '../forecast/at.ts';
import type { Forecast } from '../forecast/forecast.ts';
import { NOW_HOURS } from './weather-bars.ts';
import { whereThen } from './where-then.ts';

const MS_AN_HOUR = 3_600_000;
/** Pressure tendency is the change in 3 hours (WMO code table 0200 and its use); readings this far apart tell it (judgement). */
const TENDENCY_HOURS = 3;
const LEAST_APART_HOURS = 2;
const MOST_APART_HOURS = 4;

/** What the weather was doing at the last look, and what the forecast that counts says of that place and hour; null where it says nothing. */
export interface WeatherNow {
  readonly look: WeatherLook;
  readonly said: WeatherAt | null;
  /** How the pressure has changed, hPa in 3 h; null where it was not read some hours before as well. */
  readonly tendency: number | null;
}

/** Null where nothing was entered in the last hours. */
export function weatherNow(
  boat: Boat,
  { weather, at }: Condition,
  forecast: Forecast | null,
): WeatherNow | null {
  const look = weather.at(-1);
  if (look === undefined || at - look.at > NOW_HOURS * MS_AN_HOUR) return null;
  const where = whereThen(boat, look);
  return {
    look,
    said: where && forecast && weatherAt(forecast, where, look.at),
    tendency: tendencyAt(weather),
  };
}

/** From the last pressure and the one read nearest to 3 hours before it, two to four hours apart. */
function tendencyAt(weather: Condition['weather']): number | null {
  const last = weather.at(-1)!;
  const now = last.entry.pressure;
  if (now === undefined) return null;
  const before = weather
    .filter(({ entry }) => entry.pressure !== undefined)
    .map(({ at, entry }) => ({ hours: (last.at - at) / MS_AN_HOUR, pressure: entry.pressure! }))
    .filter(({ hours }) => hours >= LEAST_APART_HOURS && hours <= MOST_APART_HOURS)
    .sort((one, other) => Math.abs(one.hours - TENDENCY_HOURS) - Math.abs(other.hours - TENDENCY_HOURS))[0];
  return before === undefined ? null : ((now - before.pressure) * TENDENCY_HOURS) / before.hours;
}
