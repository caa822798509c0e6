import type { Anchorage } from '../boat/anchorage.ts';
import type { Limits } from '../boat/limits.ts';
import { placeFor, type Where } from '../forecast/at.ts';
import type { Forecast } from '../forecast/forecast.ts';
import type { Turns } from '../maths/turns.ts';
import type { Answer } from './answer.ts';
import { isWithin } from './turn.ts';
import { MOST_HOURS } from './weather.ts';
import type { WeatherPaths } from './weather-paths.ts';
import { type HourlyWeather, hourlyWeather } from './weather-table.ts';

const MS_AN_HOUR = 3_600_000;
/** Model 8: over in more than 1 simulated passage in 10. */
const UNTENABLE = 0.1;

/** Hours from `now` until the forecast says nothing more of an anchorage; at most as many as are looked at. */
export function hoursSaid(anchorage: Anchorage, forecast: Forecast, now: number): number {
  const last = placeFor(forecast, whereOf(anchorage))?.steps.at(-1);
  const hours = last === undefined ? 0 : Math.ceil((Date.parse(last.to) - now) / MS_AN_HOUR);
  return Math.min(Math.max(0, hours), MOST_HOURS);
}

/** The weather where she lies, for so many hours from `now`; of an anchorage the forecast names, or of its position. */
export function weatherAtAnchor(
  anchorage: Anchorage,
  forecast: Forecast,
  now: number,
  hours: number,
  errors: Limits['forecastError'],
): HourlyWeather {
  return hourlyWeather(forecast, whereOf(anchorage), now, hours, errors);
}

function whereOf({ name, at }: Anchorage): Where {
  return { place: name, at: [at[0], at[1]] };
}

/** The first hour at which the anchorage is over what it stands in more than 1 passage in 10, and by what; null where the forecast shows none. In turns. */
export function* untenableFrom(
  anchorage: Anchorage,
  weather: HourlyWeather,
  paths: WeatherPaths,
  now: number,
): Turns<Answer['staying']> {
  const met = weather.members.length > 0 ? weather.members : [weather];
  const least = leastStood(anchorage);
  for (let hour = 0; hour < Math.min(weather.hours, weather.endHour); hour += 1) {
    const over = { wind: 0, seas: 0 };
    for (let member = 0; member < met.length; member += 1)
      countOver(anchorage, least, met[member]!, paths, { hour, member, step: met.length }, over);
    if (over.wind + over.seas > UNTENABLE * paths.count) {
      const what = over.wind >= over.seas ? 'wind' : 'seas';
      return {
        until: now + hour * MS_AN_HOUR,
        why: { anchorage: anchorage.name, what, dir: weather.dir[hour]! },
      };
    }
    yield;
  }
  return null;
}

/** Adds the passages that meet this weather, every `step`-th from `member` on, in which the anchorage is over what it stands at that hour. */
function countOver(
  anchorage: Anchorage,
  least: { readonly wind: number; readonly seas: number },
  { wind, windSd, dir, dirSd, otherDirs, seas, seasSd }: Omit<HourlyWeather, 'members'>,
  { count, ...paths }: WeatherPaths,
  { hour, member, step }: { readonly hour: number; readonly member: number; readonly step: number },
  over: { wind: number; seas: number },
): void {
  const dirs = [dir[hour]!, ...(otherDirs.get(hour) ?? [])];
  const [windNow, windError, seasNow, seasError] = [wind[hour]!, windSd[hour]!, seas[hour]!, seasSd[hour]!];
  for (let at = hour * count + member; at < (hour + 1) * count; at += step) {
    const windHere = windNow + windError * paths.wind[at]!;
    const seasHere = seasNow + seasError * paths.seas[at]!;
    if (!(windHere > least.wind || seasHere > least.seas)) continue;
    const stray = dirSd[hour]! * paths.direction[at]!;
    const stands = standsAll(
      anchorage,
      dirs.map((from) => from + stray),
    );
    if (windHere > stands.wind) over.wind += 1;
    else if (seasHere > stands.seas) over.seas += 1;
  }
}

/** What it stands whatever the direction. */
function leastStood(anchorage: Anchorage): { wind: number; seas: number } {
  return standsFrom(anchorage, Number.NaN);
}

/** What it stands with the wind from each of them in turn. */
function standsAll(anchorage: Anchorage, from: readonly number[]): { wind: number; seas: number } {
  const each = from.map((one) => standsFrom(anchorage, one));
  return {
    wind: Math.min(...each.map(({ wind }) => wind)),
    seas: Math.min(...each.map(({ seas }) => seas)),
  };
}

/** What it stands with the wind from there, kn and m: what its sectors say, the lowest where several do, else what it stands from anywhere else. From an unknown direction, the lowest of all. */
function standsFrom({ wind, seas, sectors }: Anchorage, from: number): { wind: number; seas: number } {
  const unknown = Number.isNaN(from);
  const within = unknown ? sectors : sectors.filter((sector) => isWithin(from, sector));
  const lowest = (elsewhere: number | undefined, said: readonly (number | undefined)[]) => {
    const figures = [...said, unknown ? elsewhere : undefined].filter((figure) => figure !== undefined);
    return figures.length > 0 ? Math.min(...figures) : (elsewhere ?? Infinity);
  };
  return {
    wind: lowest(
      wind,
      within.map((sector) => sector.wind),
    ),
    seas: lowest(
      seas,
      within.map((sector) => sector.seas),
    ),
  };
}
