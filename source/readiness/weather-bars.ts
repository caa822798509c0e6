import type { Boat } from '../boat/boat.ts';
import type { Limits } from '../boat/limits.ts';
import type { Condition } from '../condition/condition.ts';
import type { Forecast } from '../forecast/forecast.ts';
import type { Reason } from './answer.ts';
import { hourlyWeather } from './weather-table.ts';
import { whereThen } from './where-then.ts';

const MS_AN_HOUR = 3_600_000;
/** Model 8: a forecast older than this is worth a newer one; older than twice this it never says go. */
const OLD_HOURS = 12;
const TOO_OLD_HOURS = 24;
/** Model 8: what it is doing now counts for so long, h. */
export const NOW_HOURS = 3;
/** Model 8: pressure down so much in that time. */
const FALL_HPA = 3;
/** Model 8: so many errors off the forecast. */
const FAR_OFF = 2;

/** `old`: worth a newer one; `too old`: it never says go. */
export type ForecastAge = 'fresh' | 'old' | 'too old';

export function forecastAge(hours: number): ForecastAge {
  if (hours > TOO_OLD_HOURS) return 'too old';
  return hours > OLD_HOURS ? 'old' : 'fresh';
}

/** What keeps the answer from `go` whatever the score, and what is only to be said. */
export interface WeatherBars {
  readonly bars: readonly Reason[];
  readonly said: readonly Reason[];
}

/** The age of the forecast, limits never set, and what the weather is doing now (model 8). */
export function weatherBars(
  forecast: Forecast,
  limits: Limits,
  boat: Boat,
  condition: Condition,
): WeatherBars {
  const bars: Reason[] = [];
  const said: Reason[] = [];
  const hours = (condition.at - Date.parse(forecast.issuedAt)) / MS_AN_HOUR;
  const age = forecastAge(hours);
  if (age === 'too old') bars.push({ reason: 'forecast too old', hours });
  else if (age === 'old') said.push({ reason: 'forecast old', hours });
  const missing = (['wind', 'seas'] as const).filter((what) => limits[what] === undefined);
  if (missing.length > 0) bars.push({ reason: 'no weather limits', missing });
  bars.push(...weatherNow(forecast, limits, boat, condition));
  return { bars, said };
}

/** What was entered of the weather in the last hours, unless a newer forecast has come since. */
function weatherNow(
  forecast: Forecast,
  limits: Limits,
  boat: Boat,
  { weather, at }: Condition,
): readonly Reason[] {
  const since = Math.max(at - NOW_HOURS * MS_AN_HOUR, Date.parse(forecast.issuedAt));
  const recent = weather.filter((look) => look.at >= since);
  const look = recent.at(-1);
  if (look === undefined) return [];
  const { entry: last } = look;
  const reasons: Reason[] = [];
  const over = (
    what: 'wind' | 'gust' | 'seas',
    value: number | undefined,
    limit: number | false | undefined,
  ) => {
    if (value !== undefined && typeof limit === 'number' && value > limit)
      reasons.push({ reason: 'weather now', what, value, limit });
  };
  over('wind', last.wind, limits.wind);
  over('gust', last.gust, limits.gust);
  over('seas', last.seas, limits.seas);
  const off = (what: 'wind' | 'seas', value: number | undefined, said: number, sd: number) => {
    if (value !== undefined && Math.abs(value - said) > FAR_OFF * sd)
      reasons.push({ reason: 'not as forecast', what, value, said });
  };
  const where = whereThen(boat, look);
  if (where !== null) {
    const said = hourlyWeather(forecast, where, look.at, 1, limits.forecastError);
    off('wind', last.wind, said.wind[0]!, said.windSd[0]!);
    off('seas', last.seas, said.seas[0]!, said.seasSd[0]!);
  }
  const pressures = recent.flatMap(({ entry: { pressure } }) => (pressure === undefined ? [] : [pressure]));
  const fall = pressures.length < 2 ? 0 : Math.max(...pressures) - pressures.at(-1)!;
  if (fall >= FALL_HPA) reasons.push({ reason: 'pressure falls', hPa: fall });
  return reasons;
}
