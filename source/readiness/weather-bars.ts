import type { Boat } from '../boat/boat.ts';
import type { Limits } from '../boat/limits.ts';
import type { Condition, WeatherLook } from '../condition/condition.ts';
import type { Forecast } from '../forecast/forecast.ts';
import type { Reason } from './answer.ts';
import { weatherSaid } from './weather-said.ts';
import { GUST_ERROR, hourlyWeather } from './weather-table.ts';
import { whereThen } from './where-then.ts';

const MS_AN_HOUR = 3_600_000;
/** Model 8: a forecast older than this is worth a newer one; older than twice this it never says go. */
const OLD_HOURS = 12;
const TOO_OLD_HOURS = 24;
/** Model 8: what it is doing now counts for so long, h. */
export const NOW_HOURS = 3;
/** Model 8: pressure down so much in that time. */
const FALL_HPA = 3;
/** Tenths of a hPa are not exact in binary: 1013.4 less 1010.4 is a little below 3. */
const ROUNDING_HPA = 1e-6;
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
  said.push(...weatherSaid(forecast, limits, condition));
  return { bars, said };
}

/** What was entered of the weather in the last hours, unless a newer forecast has come since. Every look counts: the wind of two hours ago is not taken back by a look at the glass. */
function weatherNow(
  forecast: Forecast,
  limits: Limits,
  boat: Boat,
  { weather, at }: Condition,
): readonly Reason[] {
  const since = Math.max(at - NOW_HOURS * MS_AN_HOUR, Date.parse(forecast.issuedAt));
  const recent = weather.filter((look) => look.at >= since);
  const over = (['wind', 'gust', 'seas'] as const).flatMap((what) => overLimit(what, limits[what], recent));
  const squall = recent.findLast(({ entry }) => entry.squalls === 'line');
  return [
    ...over,
    ...(squall === undefined ? [] : [{ reason: 'squalls now' as const, at: squall.at }]),
    ...notAsForecast(recent, forecast, limits, boat),
    ...pressureFalls(recent),
  ];
}

/** The most that was met over a limit. */
function overLimit(
  what: 'wind' | 'gust' | 'seas',
  limit: number | false | undefined,
  recent: readonly WeatherLook[],
): readonly Reason[] {
  if (typeof limit !== 'number') return [];
  const worst = recent.reduce<WeatherLook | null>(
    (most, look) => ((look.entry[what] ?? limit) > (most?.entry[what] ?? limit) ? look : most),
    null,
  );
  return worst ? [{ reason: 'weather now', what, value: worst.entry[what]!, limit, at: worst.at }] : [];
}

/** Of each figure the look that lies furthest off what was forecast, in its errors, where that is far. A gust the forecast does not give is no measure of it. */
function notAsForecast(
  recent: readonly WeatherLook[],
  forecast: Forecast,
  limits: Limits,
  boat: Boat,
): readonly Reason[] {
  const furthest = new Map<string, { readonly errors: number; readonly reason: Reason }>();
  for (const look of recent) {
    const where = whereThen(boat, look);
    if (where === null) continue;
    const table = hourlyWeather(forecast, where, look.at, 1, limits.forecastError);
    const [windSd, seasSd] = [table.windSd[0]!, table.seasSd[0]!];
    const gust = table.derivedGust ? Number.NaN : table.gust[0]!;
    for (const [what, said, sd] of [
      ['wind', table.wind[0]!, windSd],
      ['gust', gust, GUST_ERROR * windSd],
      ['seas', table.seas[0]!, seasSd],
    ] as const) {
      const value = look.entry[what];
      if (value === undefined) continue;
      const errors = Math.abs(value - said) / sd;
      if (errors > Math.max(FAR_OFF, furthest.get(what)?.errors ?? 0))
        furthest.set(what, { errors, reason: { reason: 'not as forecast', what, value, said, at: look.at } });
    }
  }
  return [...furthest.values()].map(({ reason }) => reason);
}

/** From the highest of the last hours to the last. */
function pressureFalls(recent: readonly WeatherLook[]): readonly Reason[] {
  const pressures = recent.flatMap(({ entry: { pressure } }) => (pressure === undefined ? [] : [pressure]));
  const fall = pressures.length < 2 ? 0 : Math.max(...pressures) - pressures.at(-1)!;
  return fall >= FALL_HPA - ROUNDING_HPA ? [{ reason: 'pressure falls', hPa: fall }] : [];
}
