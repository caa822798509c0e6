import type { Limits } from '../boat/limits.ts';
import type { Condition } from '../condition/condition.ts';
import type { Forecast } from '../forecast/forecast.ts';
import type { Reason } from './answer.ts';
import type { HourlyWeather } from './weather-table.ts';

const MS_AN_HOUR = 3_600_000;
/** Model 8: a forecast older than this is worth a newer one; older than twice this it never says go. */
const OLD_HOURS = 12;
const TOO_OLD_HOURS = 24;
/** Model 8: what it is doing now counts for so long, h. */
const NOW_HOURS = 3;
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

/** The age of the forecast, limits never set, and what the weather is doing now (model 8). `here`: the forecast where she is. */
export function weatherBars(
  forecast: Forecast,
  limits: Limits,
  condition: Condition,
  here: HourlyWeather | null,
): WeatherBars {
  const bars: Reason[] = [];
  const said: Reason[] = [];
  const hours = (condition.at - Date.parse(forecast.issuedAt)) / MS_AN_HOUR;
  const age = forecastAge(hours);
  if (age === 'too old') bars.push({ reason: 'forecast too old', hours });
  else if (age === 'old') said.push({ reason: 'forecast old', hours });
  const missing = (['wind', 'seas'] as const).filter((what) => limits[what] === undefined);
  if (missing.length > 0) bars.push({ reason: 'no weather limits', missing });
  bars.push(...weatherNow(forecast, limits, condition, here));
  return { bars, said };
}

/** What was entered of the weather in the last hours, unless a newer forecast has come since. */
function weatherNow(
  forecast: Forecast,
  limits: Limits,
  { weather, at }: Condition,
  here: HourlyWeather | null,
): readonly Reason[] {
  const since = Math.max(at - NOW_HOURS * MS_AN_HOUR, Date.parse(forecast.issuedAt));
  const recent = weather.filter((entry) => Date.parse(entry.at) >= since);
  const last = recent.at(-1);
  if (last === undefined) return [];
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
  const off = (what: 'wind' | 'seas', value: number | undefined, said: Float64Array, sd: Float64Array) => {
    if (value !== undefined && Math.abs(value - said[0]!) > FAR_OFF * sd[0]!)
      reasons.push({ reason: 'not as forecast', what, value, said: said[0]! });
  };
  if (here !== null) {
    off('wind', last.wind, here.wind, here.windSd);
    off('seas', last.seas, here.seas, here.seasSd);
  }
  const pressures = recent.flatMap(({ pressure }) => (pressure === undefined ? [] : [pressure]));
  const fall = pressures.length < 2 ? 0 : Math.max(...pressures) - pressures.at(-1)!;
  if (fall >= FALL_HPA) reasons.push({ reason: 'pressure falls', hPa: fall });
  return reasons;
}
