import type { Boat } from '../boat/boat.ts';
import type { Condition, WeatherLook } from '../condition/condition.ts';
import { type WeatherAt, weatherAt } from '../forecast/at.ts';
import type { Forecast } from '../forecast/forecast.ts';
import { NOW_HOURS } from './weather-bars.ts';
import { whereThen } from './where-then.ts';

const MS_AN_HOUR = 3_600_000;

/** What the weather was doing at the last look, and what the forecast that counts says of that place and hour; null where it says nothing. */
export interface WeatherNow {
  readonly look: WeatherLook;
  readonly said: WeatherAt | null;
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
  return { look, said: where && forecast && weatherAt(forecast, where, look.at) };
}
