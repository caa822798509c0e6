import type { Limits } from '../boat/limits.ts';
import { type MemberAt, type WeatherAt, type Where, weatherAt } from '../forecast/at.ts';
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
/** What a member of an ensemble strays beside the others: the rest is in their differences (model 8, with an ensemble: half the error). */
const MEMBER_ERROR = 0.5;

/** What a forecast says of one place, hour by hour from now. NaN where it does not say. Of an ensemble the figures are the forecast's own, the errors as far as its members lie from them and stray. */
export interface HourlyWeather {
  readonly hours: number;
  /** kn, and one sd of its error. */
  readonly wind: Float64Array;
  readonly windSd: Float64Array;
  readonly gust: Float64Array;
  /** Degrees true, and one sd. */
  readonly dir: Float64Array;
  readonly dirSd: Float64Array;
  /** Further directions said for an hour, as where the wind shifts in it; NaN among them is from anywhere. Hours without are absent. */
  readonly otherDirs: ReadonlyMap<number, readonly number[]>;
  /** m, and one sd. */
  readonly seas: Float64Array;
  readonly seasSd: Float64Array;
  /** s */
  readonly period: Float64Array;
  readonly squallLine: Uint8Array;
  /** A gale or stronger warning is in force. */
  readonly gale: Uint8Array;
  /** One for small craft, or of strong wind below a gale. */
  readonly smallCraft: Uint8Array;
  /** Some gust was taken from the wind. */
  readonly derivedGust: boolean;
  /** The hour from which nothing more is said. */
  readonly endHour: number;
  /** The weather the simulated passages meet, taken in turn; empty outside an ensemble: all then meet the one above. */
  readonly members: readonly HourlyWeather[];
}

/** Reads a forecast for one place at every whole hour from `now` (ms since 1970 UTC), `hours` of them. */
export function hourlyWeather(
  forecast: Forecast,
  where: Where,
  now: number,
  hours: number,
  errors: Limits['forecastError'],
): HourlyWeather {
  const table = blank(hours);
  const members: Table[] = [];
  const error = { ...USUAL_ERROR, ...withoutAbsent(errors) };
  for (let hour = 0; hour < hours; hour += 1) {
    const instant = now + hour * MS_AN_HOUR;
    const said = weatherAt(forecast, where, instant);
    if (said === null) continue;
    const days = Math.max(0, instant - Date.parse(forecast.issuedAt)) / (24 * MS_AN_HOUR);
    const sds = {
      wind: sdAfter(error.wind, days),
      direction: sdAfter(error.direction, days),
      seas: sdAfter(error.seas, days),
    };
    put(table, hour, said, sds, { wind: 1, seas: 1 });
    putWarnings(table, hour, said);
    putOtherDirs(table, hour, said);
    for (const [i, member] of said.members.entries()) {
      members[i] ??= blank(hours);
      const share = { wind: member.ownWind ? MEMBER_ERROR : 1, seas: member.ownSeas ? MEMBER_ERROR : 1 };
      put(members[i], hour, member, sds, share);
      putWarnings(members[i], hour, said);
      if (!member.ownWind) putOtherDirs(members[i], hour, said);
    }
    if (members.length > 0) spread(table, members, hour);
  }
  return { ...table, members: members.map((one) => ({ ...one, endHour: table.endHour, members: [] })) };
}

type Table = { -readonly [K in keyof Omit<HourlyWeather, 'members' | 'otherDirs'>]: HourlyWeather[K] } & {
  otherDirs: Map<number, readonly number[]>;
};

function blank(hours: number): Table {
  const figures = () => new Float64Array(hours).fill(Number.NaN);
  const flags = () => new Uint8Array(hours);
  return {
    hours,
    ...{ wind: figures(), windSd: figures(), gust: figures(), dir: figures(), dirSd: figures() },
    otherDirs: new Map(),
    ...{ seas: figures(), seasSd: figures(), period: figures() },
    ...{ squallLine: flags(), gale: flags(), smallCraft: flags() },
    ...{ derivedGust: false, endHour: 0 },
  };
}

function put(
  table: Table,
  hour: number,
  { wind, gust, dir, seas, period }: Pick<MemberAt, 'wind' | 'gust' | 'dir' | 'seas' | 'period'>,
  sds: { readonly wind: number; readonly direction: number; readonly seas: number },
  share: { readonly wind: number; readonly seas: number },
): void {
  if (wind !== null) {
    table.wind[hour] = middle(wind);
    table.windSd[hour] = share.wind * sds.wind + RANGE_ERROR * width(wind);
  }
  if (seas !== null) {
    table.seas[hour] = middle(seas);
    table.seasSd[hour] = share.seas * sds.seas * middle(seas) + RANGE_ERROR * width(seas);
  }
  table.gust[hour] = gust ?? Number.NaN;
  table.dir[hour] = dir ?? Number.NaN;
  table.dirSd[hour] = share.wind * sds.direction;
  table.period[hour] = period ?? Number.NaN;
}

function putOtherDirs({ otherDirs: into }: Table, hour: number, { otherDirs }: WeatherAt): void {
  if (otherDirs.length > 0)
    into.set(
      hour,
      otherDirs.map((dir) => dir ?? Number.NaN),
    );
}

function putWarnings(table: Table, hour: number, { squalls, warnings, derivedGust }: WeatherAt): void {
  table.endHour = hour + 1;
  table.squallLine[hour] = Number(squalls === 'line');
  table.gale[hour] = Number(warnings.some(isGale));
  table.smallCraft[hour] = Number(warnings.some(isSmallCraft));
  table.derivedGust ||= derivedGust;
}

/** Makes the errors of a forecast those of its members: how far they lie from it, and their own. */
function spread(table: Table, members: readonly Table[], hour: number): void {
  for (const [figure, sd] of [
    ['wind', 'windSd'],
    ['seas', 'seasSd'],
  ] as const) {
    const squares = members
      .map((one) => (one[figure][hour]! - table[figure][hour]!) ** 2 + one[sd][hour]! ** 2)
      .filter((square) => !Number.isNaN(square));
    if (squares.length > 0)
      table[sd][hour] = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
  }
}

/** One sd of an error so many days after issue. */
export function sdAfter({ atIssue, perDay }: ErrorGrowth, days: number): number {
  return atIssue + perDay * days;
}

/** A gale warning or a stronger one. */
export function isGale({ level, about }: Headline): boolean {
  return level === 'warning' && about !== null && about !== 'squalls' && !isSmallCraft({ about });
}

/** A warning below a gale: strong wind is 26 to 33 knots where it is warned of (Australian Bureau of Meteorology), small craft up to 33 (US National Weather Service). */
export function isSmallCraft({ about }: Pick<Headline, 'about'>): boolean {
  return about === 'small craft' || about === 'strong wind';
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
