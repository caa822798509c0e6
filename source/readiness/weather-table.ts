import type { Limits } from '../boat/limits.ts';
import { type Where, weatherAt } from '../forecast/at.ts';
import type { Forecast, Headline } from '../forecast/forecast.ts';

const MS_AN_HOUR = 3_600_000;

/** One sd of an error at issue, and what each day of lead adds. */
export interface ErrorGrowth {
  readonly atIssue: number;
  readonly perDay: number;
}

/** How far forecasts stray: one sd at issue and what each day of lead adds (model 8). Common practice, from memory; the skipper's to change, the log's to learn. */
export const USUAL_ERROR = {
  /** kn */
  wind: { atIssue: 2.5, perDay: 0.8 },
  /** degrees */
  direction: { atIssue: 12, perDay: 5 },
  /** parts of the forecast height */
  seas: { atIssue: 0.12, perDay: 0.05 },
};
/** The error of a gust in errors of the wind. */
export const GUST_ERROR = 1.3;
/** What a range said in words adds: this part of its width. */
export const RANGE_ERROR = 0.25;

/** What a forecast says of one place, hour by hour from now. NaN where it does not say. */
export interface HourlyWeather {
  readonly hours: number;
  /** kn, and one sd of its error. */
  readonly wind: Float64Array;
  readonly windSd: Float64Array;
  readonly gust: Float64Array;
  /** Degrees true, and one sd. */
  readonly dir: Float64Array;
  readonly dirSd: Float64Array;
  /** m, and one sd. */
  readonly seas: Float64Array;
  readonly seasSd: Float64Array;
  /** s */
  readonly period: Float64Array;
  readonly squallLine: Uint8Array;
  /** A gale or stronger warning is in force. */
  readonly gale: Uint8Array;
  readonly smallCraft: Uint8Array;
  /** Some gust was taken from the wind. */
  readonly derivedGust: boolean;
  /** The hour from which nothing more is said. */
  readonly endHour: number;
}

/** Reads a forecast for one place at every whole hour from `now` (ms since 1970 UTC), `hours` of them. */
export function hourlyWeather(
  forecast: Forecast,
  where: Where,
  now: number,
  hours: number,
  errors: Limits['forecastError'],
): HourlyWeather {
  const blank = () => new Float64Array(hours).fill(Number.NaN);
  const [wind, windSd, gust, dir, dirSd] = [blank(), blank(), blank(), blank(), blank()];
  const [seas, seasSd, period] = [blank(), blank(), blank()];
  const flags = () => new Uint8Array(hours);
  const [squallLine, gale, smallCraft] = [flags(), flags(), flags()];
  const error = { ...USUAL_ERROR, ...withoutAbsent(errors) };
  let derivedGust = false;
  let endHour = 0;
  for (let hour = 0; hour < hours; hour += 1) {
    const instant = now + hour * MS_AN_HOUR;
    const said = weatherAt(forecast, where, instant);
    if (said === null) continue;
    endHour = hour + 1;
    const days = Math.max(0, instant - Date.parse(forecast.issuedAt)) / (24 * MS_AN_HOUR);
    if (said.wind !== null) {
      wind[hour] = middle(said.wind);
      windSd[hour] = sdAfter(error.wind, days) + RANGE_ERROR * width(said.wind);
    }
    if (said.seas !== null) {
      seas[hour] = middle(said.seas);
      seasSd[hour] = sdAfter(error.seas, days) * middle(said.seas) + RANGE_ERROR * width(said.seas);
    }
    gust[hour] = said.gust ?? Number.NaN;
    dir[hour] = said.dir ?? Number.NaN;
    dirSd[hour] = sdAfter(error.direction, days);
    period[hour] = said.period ?? Number.NaN;
    squallLine[hour] = Number(said.squalls === 'line');
    gale[hour] = Number(said.warnings.some(isGale));
    smallCraft[hour] = Number(said.warnings.some(({ about }) => about === 'small craft'));
    derivedGust ||= said.derivedGust;
  }
  return {
    hours,
    wind,
    windSd,
    gust,
    dir,
    dirSd,
    seas,
    seasSd,
    period,
    squallLine,
    gale,
    smallCraft,
    derivedGust,
    endHour,
  };
}

/** One sd of an error so many days after issue. */
export function sdAfter({ atIssue, perDay }: ErrorGrowth, days: number): number {
  return atIssue + perDay * days;
}

function isGale({ level, about }: Headline): boolean {
  return level === 'warning' && about !== null && about !== 'small craft' && about !== 'squalls';
}

export function middle([low, high]: readonly [number, number]): number {
  return (low + high) / 2;
}

export function width([low, high]: readonly [number, number]): number {
  return high - low;
}

function withoutAbsent<T extends object>(given: T | undefined): { [K in keyof T]?: NonNullable<T[K]> } {
  return Object.fromEntries(Object.entries(given ?? {}).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  };
}
