import type { Boat } from '../boat/boat.ts';
import type { WeatherLook } from '../condition/condition.ts';
import { placeFor, type Where, weatherAt } from '../forecast/at.ts';
import type { Forecast } from '../forecast/forecast.ts';
import {
  type ErrorGrowth,
  GUST_ERROR,
  middle,
  RANGE_ERROR,
  sdAfter,
  USUAL_ERROR,
  width,
} from './weather-table.ts';
import { whereThen } from './where-then.ts';

const MS_A_DAY = 86_400_000;
/** How far back is lately: a season. Judgement, no source. */
const LATELY_DAYS = 90;
/** Model 8: so many looks at the weather, set against forecasts, before their errors are the boat's own. */
const LOOKS_WANTED = 30;
/** Leads told apart, days; the last has no end. */
const LEADS = [0, 1, 2, 3];
/** Own errors are never taken for less than this part of common practice: a quiet month is no better forecaster (judgement). */
const LEAST_SCALE = 0.25;
const MOST_SCALE = 10;

const MET_QUANTITIES = ['wind', 'gust', 'direction', 'seas'] as const;
export type MetQuantity = (typeof MET_QUANTITIES)[number];
type Learned = 'wind' | 'direction' | 'seas';

/** How far forecasts were off: what was met less what they said, in kn, degrees, or for seas parts of the height said. */
export interface ForecastMet {
  /** Looks at the weather for which there was a forecast. */
  readonly looks: number;
  readonly wanted: number;
  /** Whole days of lead, from and to; null has no end. Only those there is something of. */
  readonly by: readonly {
    readonly what: MetQuantity;
    readonly lead: readonly [from: number, to: number | null];
    readonly count: number;
    readonly mean: number;
    /** Null of a single one. */
    readonly sd: number | null;
  }[];
  /** The boat's own error figures, where enough looks stand behind them; null where there is none. */
  readonly own: { readonly [what in Learned]?: ErrorGrowth } | null;
}

interface Comparison {
  readonly what: MetQuantity;
  readonly look: number;
  readonly leadDays: number;
  readonly off: number;
  /** What common practice expects of it, one sd: what grows with the lead, and what a range said in words adds. */
  readonly usual: number;
  readonly range: number;
}

/**
 * Sets every look at the weather of late against all forecasts that had been received by then and spoke of that place. Lying, only those that name the anchorage or
 * have a point near it: the wind behind a hill is no measure of a forecast for the open sea.
 * Own figures have the form of common practice, an error at issue and a growth each day, both scaled by one factor: that which makes the squares of the errors,
 * in their own sds, 1 on average (the greatest likelihood for normal errors of mean 0). Every look counts once, however many forecasts spoke of it.
 */
export function forecastMet(
  boat: Boat,
  { weather, at }: { readonly weather: readonly WeatherLook[]; readonly at: number },
  forecasts: readonly Forecast[],
): ForecastMet {
  const recent = weather.filter((look) => at - look.at <= LATELY_DAYS * MS_A_DAY);
  const spans = forecasts.map(spanOf);
  const all = recent.flatMap((look) => comparisonsOf(look, boat, spans));
  return {
    looks: new Set(all.map(({ look }) => look)).size,
    wanted: LOOKS_WANTED,
    by: MET_QUANTITIES.flatMap((what) => LEADS.flatMap((_, lead) => summaryOf(all, what, lead))),
    own: ownErrors(all),
  };
}

/** A forecast with the instants between which it can be held to anything: from when it was received to its end. */
interface Spanned {
  readonly forecast: Forecast;
  readonly from: number;
  readonly to: number;
}

function spanOf(forecast: Forecast): Spanned {
  const ends = forecast.places.map(({ steps }) => Date.parse(steps.at(-1)?.to ?? forecast.issuedAt));
  return { forecast, from: Date.parse(forecast.receivedAt), to: Math.max(...ends) };
}

function comparisonsOf(look: WeatherLook, boat: Boat, forecasts: readonly Spanned[]): Comparison[] {
  const where = whereThen(boat, look);
  if (where === null) return [];
  const lying = look.where !== null && 'anchorage' in look.where;
  return forecasts
    .filter(({ from, to }) => from <= look.at && look.at < to)
    .filter(({ forecast }) => !lying || speaksOf(forecast, where))
    .flatMap(({ forecast }) => comparedWith(look, forecast, where));
}

/** Whether a forecast means this place, not everywhere. */
function speaksOf(forecast: Forecast, where: Where): boolean {
  const place = placeFor(forecast, where);
  return place !== null && (place.place !== '' || place.at !== undefined);
}

function comparedWith({ entry, at }: WeatherLook, forecast: Forecast, where: Where): Comparison[] {
  const said = weatherAt(forecast, where, at);
  if (said === null) return [];
  const leadDays = Math.max(0, at - Date.parse(forecast.issuedAt)) / MS_A_DAY;
  const found: Comparison[] = [];
  const add = (what: MetQuantity, off: number, usual: number, range: number) =>
    found.push({ what, look: at, leadDays, off, usual, range });
  const windSd = sdAfter(USUAL_ERROR.wind, leadDays);
  if (said.wind && entry.wind !== undefined)
    add('wind', entry.wind - middle(said.wind), windSd, RANGE_ERROR * width(said.wind));
  if (said.gust !== null && !said.derivedGust && entry.gust !== undefined)
    add('gust', entry.gust - said.gust, GUST_ERROR * windSd, 0);
  if (said.dir !== null && said.otherDirs.length === 0 && entry.dir !== undefined)
    add('direction', turnBetween(said.dir, entry.dir), sdAfter(USUAL_ERROR.direction, leadDays), 0);
  if (said.seas && middle(said.seas) > 0 && entry.seas !== undefined) {
    const high = middle(said.seas);
    const range = (RANGE_ERROR * width(said.seas)) / high;
    add('seas', (entry.seas - high) / high, sdAfter(USUAL_ERROR.seas, leadDays), range);
  }
  return found;
}

/** Clockwise from one bearing to the other, -180 to 180 degrees. */
function turnBetween(from: number, to: number): number {
  return ((((to - from) % 360) + 540) % 360) - 180;
}

function summaryOf(all: readonly Comparison[], what: MetQuantity, lead: number): ForecastMet['by'] {
  const [from, to = null] = [LEADS[lead]!, LEADS[lead + 1]];
  const offs = all
    .filter((one) => one.what === what && one.leadDays >= from && (to === null || one.leadDays < to))
    .map(({ off }) => off);
  if (offs.length === 0) return [];
  const mean = offs.reduce((sum, off) => sum + off, 0) / offs.length;
  const squares = offs.reduce((sum, off) => sum + (off - mean) ** 2, 0);
  const sd = offs.length < 2 ? null : Math.sqrt(squares / (offs.length - 1));
  return [{ what, lead: [from, to], count: offs.length, mean, sd }];
}

function ownErrors(all: readonly Comparison[]): ForecastMet['own'] {
  const own: { [what in Learned]?: ErrorGrowth } = {};
  for (const what of ['wind', 'direction', 'seas'] as const) {
    const looks = Map.groupBy(
      all.filter((one) => one.what === what),
      ({ look }) => look,
    );
    if (looks.size < LOOKS_WANTED) continue;
    const scale = scaleOf([...looks.values()]);
    const { atIssue, perDay } = USUAL_ERROR[what];
    own[what] = { atIssue: scale * atIssue, perDay: scale * perDay };
  }
  return Object.keys(own).length === 0 ? null : own;
}

/** The factor on common practice at which the squared errors, in their own sds, are 1 on average; by halving, since they only fall as it grows. */
function scaleOf(looks: readonly (readonly Comparison[])[]): number {
  const squared = (scale: number) => {
    const ofLooks = looks.map((ones) => {
      const sum = ones.reduce(
        (total, { off, usual, range }) => total + (off / (scale * usual + range)) ** 2,
        0,
      );
      return sum / ones.length;
    });
    return ofLooks.reduce((sum, one) => sum + one, 0) / looks.length;
  };
  let [low, high] = [LEAST_SCALE, MOST_SCALE];
  if (squared(low) <= 1) return low;
  for (let halving = 0; halving < 50; halving += 1) {
    const half = (low + high) / 2;
    if (squared(half) > 1) low = half;
    else high = half;
  }
  return high;
}
