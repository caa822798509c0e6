import type { Limits } from '../boat/limits.ts';
import type { Passage } from '../boat/passage.ts';
import type { Condition } from '../condition/condition.ts';
import { placeFor } from '../forecast/at.ts';
import type { Forecast } from '../forecast/forecast.ts';
import type { Turns } from '../maths/turns.ts';
import { type Piece, piecesOf, whereOf } from '../passage/pieces.ts';
import { daylightsBetween } from '../passage/sun.ts';
import type { Bits } from './bits.ts';
import { type Departures, departing } from './departures.ts';
import { hoursUnderWay, type Passages } from './passages.ts';
import { spansOf } from './spans.ts';
import { drawingPaths, type WeatherPaths } from './weather-paths.ts';
import { type HourlyWeather, hourlyWeather } from './weather-table.ts';

const MS_AN_HOUR = 3_600_000;
/** Model, Terms: departures are looked at to the end of the forecast, at most so many hours ahead. */
export const MOST_HOURS = 240;
/** The forecast must cover the whole passage, at most so many hours (model 8). */
export const MUST_COVER_HOURS = 72;

/** The weather of all simulated passages, and those it lets through. */
export interface Weather {
  readonly lastHour: number;
  readonly hours: number;
  readonly paths: WeatherPaths;
  readonly held: readonly Bits[];
  readonly worst: Departures['worst'];
  readonly worstOfLegs: Departures['worstOfLegs'];
  /** Engine hours under way when leaving at that hour, one a passage. */
  motored(hour: number): Float64Array;
  /** The forecast of each leg, where it is sailed first. */
  readonly legs: readonly HourlyWeather[];
}

/** A passage, whole hours of the forecast for it, what it needs of each. */
export interface Course {
  readonly passage: Passage;
  readonly pieces: readonly Piece[];
  readonly tables: readonly HourlyWeather[];
  readonly lastHour: number;
  readonly hours: number;
}

/** Reads a forecast along a passage. Null where it says nothing of it any more. */
export function courseThrough(forecast: Forecast, condition: Condition, limits: Limits): Course | null {
  const { passage, at, underWay } = condition;
  if (passage === null) return null;
  const pieces = piecesOf(passage);
  const left = Math.max(0, ...pieces.map((piece) => lastSaid(forecast, piece, at)));
  if (left === 0) return null;
  const hours = Math.min(Math.ceil(left), 2 * MOST_HOURS);
  const seen = new Map<unknown, HourlyWeather>();
  const tables = pieces.map((piece) => {
    const place = placeFor(forecast, whereOf(piece));
    const known = seen.get(place) ?? hourlyWeather(forecast, whereOf(piece), at, hours, limits.forecastError);
    seen.set(place, known);
    return known;
  });
  const lastHour = underWay === null ? Math.min(MOST_HOURS, hours - 1) : 0;
  return { passage, pieces, tables, lastHour, hours };
}

/** Sails the course from every hour, in every passage; in turns. */
export function* simulatingWeather(
  course: Course,
  condition: Condition,
  limits: Limits,
  passages: Passages,
): Turns<Weather> {
  const { passage, tables, lastHour } = course;
  const { count, speed, share, streamOf, now } = passages;
  const hours = lastHour > 0 ? course.hours : Math.min(course.hours, longestHours(passage, passages) + 1);
  const paths = yield* drawingPaths(count, hours, streamOf);
  const motoring = Object.keys(passage.motoring)[0];
  const common = {
    limits,
    motorBelow: passage.motorBelow,
    motorToWindward: passage.motorToWindward,
    share: (motoring === undefined ? undefined : share.get(motoring)) ?? new Float64Array(count),
    paths,
  };
  const spans = spansOf(course, condition, common);
  const sailed = hoursUnderWay(condition);
  const { held, motored, worst, worstOfLegs } = yield* departing({
    count,
    lastHour,
    hours,
    speed,
    sailedNm: speed.map((knots) => knots * sailed),
    share: common.share,
    spans,
    waitHours: passage.waitHours,
    overHours: limits.overHours,
    mustCover: limits.forecastMustCover ?? MUST_COVER_HOURS,
    mayArrive: arrivals(passage, limits, now, passages),
  });
  const legs = passage.legs.map((_, leg) => tables[course.pieces.findIndex((piece) => piece.leg === leg)]!);
  return {
    lastHour,
    hours,
    paths,
    held,
    worst,
    worstOfLegs,
    motored: (hour) => motored.subarray(hour * count, (hour + 1) * count),
    legs,
  };
}

/** Hours from now until the forecast says nothing more of a piece. */
function lastSaid(forecast: Forecast, piece: Piece, now: number): number {
  const last = placeFor(forecast, whereOf(piece))?.steps.at(-1);
  return last === undefined ? 0 : (Date.parse(last.to) - now) / MS_AN_HOUR;
}

/** What the slowest of the passages takes, every wait at a gate with it; whole hours. */
function longestHours({ legs, waitHours }: Passage, { hours }: Passages): number {
  return Math.ceil(hours.reduce((most, one) => Math.max(most, one), 0) + waitHours * legs.length);
}

/** Whether an arrival so many hours from now falls in daylight with the skipper's margins; any does where he asks for none. */
function arrivals(
  passage: Passage,
  { daylight }: Limits,
  now: number,
  passages: Passages,
): (hour: number) => boolean {
  if (daylight === undefined || daylight === false) return () => true;
  const { afterSunrise = 0, beforeSunset = 0 } = daylight;
  const until =
    now + (MOST_HOURS + Math.min(longestHours(passage, passages), 10 * MOST_HOURS) + 24) * MS_AN_HOUR;
  const days = daylightsBetween(now, until, passage.legs.at(-1)!.to).map(({ from, to }) => ({
    from: (from - now) / MS_AN_HOUR + afterSunrise,
    to: (to - now) / MS_AN_HOUR - beforeSunset,
  }));
  // Asked for every passage of every departure, so where to look is told for each whole hour.
  const ends = Float64Array.from(days, ({ to }) => to);
  const begins = Float64Array.from(days, ({ from }) => from);
  const notOver = Uint16Array.from({ length: Math.max(0, Math.ceil(ends.at(-1) ?? 0)) }, (_, hour) =>
    ends.findIndex((end) => end >= hour),
  );
  return (hour) => {
    let day = notOver[Math.floor(hour)] ?? days.length;
    while (day < days.length && ends[day]! < hour) day += 1;
    return day < days.length && begins[day]! <= hour;
  };
}
