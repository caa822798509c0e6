import type { WeatherDocument } from './weather-document.ts';
import { hindrancePhrase } from './weather-reasons.ts';

const MS_AN_HOUR = 3_600_000;
/** Wind within so many degrees of the bow is a headwind (words: headwind). */
const HEADWIND_DEG = 60;

/** What one leg meets when leaving at an hour, at the usual speed: the hardest of the hours it takes. Null is what the forecast does not say. */
export interface LegMet {
  readonly place: string;
  /** ms since 1970 UTC. */
  readonly from: number;
  readonly until: number;
  /** kn: the mean and one sd on either side of it, never below 0. */
  readonly wind: { readonly mean: number; readonly low: number; readonly high: number } | null;
  /** Degrees true, where the wind comes from in its hardest hour; `ahead`: then it is a headwind. */
  readonly dir: number | null;
  readonly ahead: boolean;
  readonly gust: number | null;
  /** m */
  readonly seas: number | null;
  /** What stands in the way most, as it is said, and in which share of the passages it does so first; null where nothing does. */
  readonly stands: { readonly why: string; readonly share: number } | null;
  /** Some of it is sailed past the end of the forecast. */
  readonly beyond: boolean;
}

/** Every leg still to sail, when leaving at that hour of the curve. */
export function legsMet(weather: WeatherDocument, hour: number): readonly LegMet[] {
  const { from, legs, forecasts, departures } = weather;
  return legs.flatMap((leg, index) => {
    if (leg.lastsHours <= 0) return [];
    const begins = hour + leg.startsHours;
    const ends = begins + leg.lastsHours;
    const forecast = forecasts[leg.forecast]!;
    const hours = range(Math.floor(begins), Math.ceil(ends));
    const windiest = hardest(forecast.wind, hours);
    const standing = departures[hour]?.find((one) => one.leg === index);
    const dir = windiest === null ? null : (forecast.dir[windiest] ?? null);
    return [
      {
        place: leg.place ?? `leg ${index + 1}`,
        from: Date.parse(from) + begins * MS_AN_HOUR,
        until: Date.parse(from) + ends * MS_AN_HOUR,
        wind: windiest === null ? null : spread(forecast.wind[windiest]!, forecast.windSd[windiest] ?? 0),
        dir,
        ahead: dir !== null && offBow(dir, leg.courseDeg) < HEADWIND_DEG,
        gust: most(forecast.gust, hours),
        seas: most(forecast.seas, hours),
        stands: standing ? { why: standingPhrase(weather, standing.what), share: standing.share } : null,
        beyond: hours.some((at) => at >= forecast.wind.length),
      },
    ];
  });
}

/** What stands in the way, with the skipper's figure for it. */
export function standingPhrase(
  { limits }: WeatherDocument,
  what: WeatherDocument['departures'][number][number]['what'],
): string {
  const limit = { wind: limits.wind, headwind: limits.headwind, gust: limits.gust, seas: limits.seas }[
    what as string
  ];
  return hindrancePhrase({ hindrance: what, limit: limit ?? null });
}

function range(first: number, end: number): readonly number[] {
  return Array.from({ length: Math.max(1, end - first) }, (_, index) => first + index);
}

function hardest(figures: readonly (number | null)[], hours: readonly number[]): number | null {
  let best: number | null = null;
  for (const hour of hours) {
    const figure = figures[hour] ?? null;
    if (figure !== null && (best === null || figure > figures[best]!)) best = hour;
  }
  return best;
}

function most(figures: readonly (number | null)[], hours: readonly number[]): number | null {
  const hour = hardest(figures, hours);
  return hour === null ? null : figures[hour]!;
}

function spread(mean: number, sd: number) {
  return { mean, low: Math.max(0, mean - sd), high: mean + sd };
}

function offBow(dir: number, courseDeg: number): number {
  const turn = dir - courseDeg;
  return Math.abs(turn - 360 * Math.round(turn / 360));
}
