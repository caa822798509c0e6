import type { Limits } from '../boat/limits.ts';
import type { Hindrance } from './hindrances.ts';
import type { Course, Weather } from './weather.ts';
import type { HourlyWeather } from './weather-table.ts';

/** Smaller shares of the passages are not worth a line. */
const LEAST_SHARE = 0.005;

/** The forecast against the limits, for each leg and each hour of leaving. */
export interface WeatherShown {
  /** Hour 0 of every list, ms since 1970 UTC. */
  readonly from: number;
  readonly limits: Pick<Limits, 'wind' | 'gust' | 'seas' | 'headwind' | 'overHours'>;
  readonly legs: readonly LegShown[];
  /** Legs with the same weather share one. */
  readonly forecasts: readonly HourlyWeather[];
  /** For every departure of the curve what stands in the way: the worst of each leg, in the share of the passages it fails first. */
  readonly departures: readonly (readonly Standing[])[];
}

interface LegShown {
  /** What the boat file calls it. */
  readonly place: string | null;
  readonly nm: number;
  readonly courseDeg: number;
  /** At the usual speed: when it begins after leaving, and how long it takes. Under way, what is left of it. */
  readonly startsHours: number;
  readonly lastsHours: number;
  readonly forecast: number;
}

interface Standing {
  readonly leg: number;
  readonly hindrance: Hindrance;
  readonly share: number;
}

export function weatherShown(
  { passage, pieces, tables }: Course,
  { lastHour, worstOfLegs }: Weather,
  limits: Limits,
  { now, count, sailedHours }: { now: number; count: number; sailedHours: number },
): WeatherShown {
  const forecasts: HourlyWeather[] = [];
  const known = new Map<string, number>();
  const ids = new Map([...new Set(tables)].map((table, id) => [table, id]));
  const legs = passage.legs.map(({ place }, leg): LegShown => {
    const own = pieces.flatMap((piece, at) => (piece.leg === leg ? [{ piece, table: tables[at]! }] : []));
    const distinct = [...new Set(own.map(({ table }) => table))];
    const key = distinct.map((table) => ids.get(table)).join();
    const forecast = known.get(key) ?? forecasts.push(hardest(distinct)) - 1;
    known.set(key, forecast);
    const first = own[0]!.piece;
    const nm = own.reduce((sum, { piece }) => sum + piece.nm, 0);
    const begins = first.fromNm / passage.speed.mean - sailedHours;
    const ends = (first.fromNm + nm) / passage.speed.mean - sailedHours;
    return {
      place: place ?? null,
      nm,
      courseDeg: first.courseDeg,
      startsHours: Math.max(0, begins),
      lastsHours: Math.max(0, ends) - Math.max(0, begins),
      forecast,
    };
  });
  const departures = Array.from({ length: lastHour + 1 }, (_, hour) =>
    worstOfLegs(hour)
      .map(({ leg, hindrance, passages }) => ({ leg, hindrance, share: passages / count }))
      .filter(({ share }) => share >= LEAST_SHARE),
  );
  return { from: now, limits, legs, forecasts, departures };
}

/** A leg across several points of a forecast has at each hour the hardest of them. */
function hardest(tables: readonly HourlyWeather[]): HourlyWeather {
  const [first, ...rest] = tables;
  return rest.reduce((most, table) => harder(most, table), first!);
}

function harder(one: HourlyWeather, other: HourlyWeather): HourlyWeather {
  const windier = pick(one.wind, other.wind);
  const higher = pick(one.seas, other.seas);
  const of = (takes: Uint8Array, a: Float64Array, b: Float64Array) =>
    a.map((value, hour) => (takes[hour] === 1 ? b[hour]! : value));
  return {
    ...one,
    wind: of(windier, one.wind, other.wind),
    windSd: of(windier, one.windSd, other.windSd),
    dir: of(windier, one.dir, other.dir),
    dirSd: of(windier, one.dirSd, other.dirSd),
    gust: of(pick(one.gust, other.gust), one.gust, other.gust),
    seas: of(higher, one.seas, other.seas),
    seasSd: of(higher, one.seasSd, other.seasSd),
    period: of(higher, one.period, other.period),
    derivedGust: one.derivedGust || other.derivedGust,
    endHour: Math.min(one.endHour, other.endHour),
  };
}

/** 1 where the second is higher, or the first is not said. */
function pick(one: Float64Array, other: Float64Array): Uint8Array {
  return Uint8Array.from(one, (value, hour) => Number(Number.isNaN(value) || other[hour]! > value));
}
