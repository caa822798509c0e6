import type { Forecast, Headline, Member, PlaceForecast, Position, Step } from './forecast.ts';

/** What a forecast says of one place at one instant; null is what it does not say, never 0. */
export interface WeatherAt {
  /** Mean wind, knots: both ends of what is said. The figure is their middle; "up to 20" is 20 and 20. */
  readonly wind: readonly [low: number, high: number] | null;
  /** Where the wind comes from, degrees true. */
  readonly dir: number | null;
  /** Further directions said for the same time; null among them is variable or cyclonic. */
  readonly otherDirs: readonly (number | null)[];
  readonly gust: number | null;
  /** The gust is not the forecast's own but taken from the wind. */
  readonly derivedGust: boolean;
  /** Significant height, metres. */
  readonly seas: readonly [low: number, high: number] | null;
  /** Seconds. */
  readonly period: number | null;
  readonly periodKind: Step['periodKind'];
  /** hPa. */
  readonly pressure: number | null;
  readonly squalls: Step['squalls'];
  /** Those in force at that instant. */
  readonly warnings: readonly Headline[];
  /** What each member of an ensemble says instead; empty where there is none. */
  readonly members: readonly MemberAt[];
}

/** One member's own figures; null is what it does not say. What it has nothing of its own of is the forecast's. */
export interface MemberAt extends Pick<WeatherAt, 'wind' | 'dir' | 'gust' | 'seas' | 'period'> {
  readonly ownWind: boolean;
  readonly ownSeas: boolean;
}

/** A leg's `place`, or a point on it, or both: the place is looked for first. */
export interface Where {
  readonly place?: string | undefined;
  readonly at?: Position | undefined;
}

/** Gust over upper mean wind where none is said: WMO and national services print 1.23 to 1.4 at sea. */
export const GUST_FACTOR = 1.3;

/** A point of a forecast speaks for what lies this near: a piece of a leg and as much again. Judgement, no source. */
const REACH_NM = 30;

/**
 * The weather a forecast gives for a place at an instant (ms since 1970 UTC). Null where the forecast says nothing of that place or time: before it begins,
 * in a gap, from its end on.
 */
export function weatherAt(forecast: Forecast, where: Where, instant: number): WeatherAt | null {
  const place = placeFor(forecast, where);
  const at = place && stepAt(place.steps, instant);
  if (!place || at === null) return null;
  const step = place.steps[at]!;
  const { wind, dir, otherDirs = [], seas, period, periodKind, pressure, squalls } = step;
  return {
    ...{ wind, dir, otherDirs, seas, period, periodKind, pressure, squalls },
    gust: gustOf(step.gust, wind),
    derivedGust: step.gust === null && wind !== null,
    warnings: place.headlines.filter((headline) => isInForce(headline, instant)),
    members: (place.members ?? []).map((member) => memberAt(member, step, at)),
  };
}

/** With a wind of its own a member never has the forecast's gust: that is of another wind. */
function memberAt(member: Member, step: Step, at: number): MemberAt {
  const exactly = (figure: number | null) => (figure === null ? null : ([figure, figure] as const));
  const wind = member.wind ? exactly(member.wind[at]!) : step.wind;
  const gust = member.gust ? member.gust[at]! : member.wind ? null : step.gust;
  return {
    wind,
    dir: member.dir ? member.dir[at]! : step.dir,
    gust: gustOf(gust, wind),
    seas: member.seas ? exactly(member.seas[at]!) : step.seas,
    period: member.period ? member.period[at]! : step.period,
    ownWind: member.wind !== undefined,
    ownSeas: member.seas !== undefined,
  };
}

function gustOf(said: number | null, wind: readonly [number, number] | null): number | null {
  return said === null && wind !== null ? GUST_FACTOR * wind[1] : said;
}

/** The place of a forecast that speaks for a leg: the one of that name; else the nearest point within reach; else the one that speaks for everywhere. */
export function placeFor({ places }: Forecast, { place, at }: Where): PlaceForecast | null {
  const wanted = place === undefined ? '' : plain(place);
  const named = wanted === '' ? undefined : places.find((one) => plain(one.place) === wanted);
  if (named) return named;
  const near = at === undefined ? undefined : nearest(places, at);
  return near ?? places.find((one) => one.place === '' && one.at === undefined) ?? null;
}

function nearest(places: readonly PlaceForecast[], at: Position): PlaceForecast | undefined {
  let best: PlaceForecast | undefined;
  let least = REACH_NM;
  for (const place of places) {
    const away = place.at ? apartNm(place.at, at) : Number.POSITIVE_INFINITY;
    if (away <= least) {
      least = away;
      best = place;
    }
  }
  return best;
}

/** Over so short a distance the earth is flat, and a minute of latitude a mile. */
function apartNm(a: Position, b: Position): number {
  const eastward = ((((b[1] - a[1]) % 360) + 540) % 360) - 180;
  const shrink = Math.cos(((a[0] + b[0]) / 2) * (Math.PI / 180));
  return 60 * Math.hypot(b[0] - a[0], eastward * shrink);
}

/** Which step an instant lies in. */
function stepAt(steps: readonly Step[], instant: number): number | null {
  let low = 0;
  let high = steps.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (Date.parse(steps[middle]!.to) <= instant) low = middle + 1;
    else high = middle;
  }
  const step = steps[low];
  return step && Date.parse(step.from) <= instant ? low : null;
}

function isInForce({ from, to }: Headline, instant: number): boolean {
  return (from === null || Date.parse(from) <= instant) && (to === null || instant < Date.parse(to));
}

function plain(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, ' ');
}
