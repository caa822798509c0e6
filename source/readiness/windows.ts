import type { Limits } from '../boat/limits.ts';
import type { Passage } from '../boat/passage.ts';
import type { Edge, Window } from './answer.ts';
import type { Hindrance } from './hindrances.ts';
import type { JudgedItem } from './judged.ts';
import type { Weather } from './weather.ts';

const MS_AN_HOUR = 3_600_000;
/** Departures good enough in a row before they are a window (model 8). */
const LEAST_DEPARTURES = 3;

/** A run of whole-hour departures, from the first to the last. */
export interface Run {
  readonly first: number;
  readonly last: number;
}

/** Runs of departures whose score reaches the threshold (both in percent), long enough to be counted down to. */
export function runsOf(scores: readonly number[], threshold: number): readonly Run[] {
  const runs: Run[] = [];
  let first: number | null = null;
  for (let hour = 0; hour <= scores.length; hour += 1) {
    const good = hour < scores.length && scores[hour]! >= threshold;
    if (good) first ??= hour;
    else if (first !== null) {
      if (hour - first >= LEAST_DEPARTURES) runs.push({ first, last: hour - 1 });
      first = null;
    }
  }
  return runs;
}

/** The windows of the whole score, with what stands in the way just before and just after each. */
export function windowsOf(
  runs: readonly Run[],
  scores: readonly number[],
  now: number,
  edgeAt: (hour: number) => Edge | null,
): readonly Window[] {
  return runs.map(({ first, last }) => ({
    at: now + first * MS_AN_HOUR,
    until: now + last * MS_AN_HOUR,
    score: Math.max(...scores.slice(first, last + 1)),
    opens: first === 0 ? null : edgeAt(first - 1),
    closes: last === scores.length - 1 ? null : edgeAt(last + 1),
  }));
}

/** What fails most when leaving at that hour: weather on a leg, or, where the boat's own chance is lower, a vital item. */
export function edgesOf(
  weather: Weather,
  items: readonly JudgedItem[],
  passage: Passage,
  limits: Limits,
  count: number,
): (hour: number) => Edge | null {
  return (hour) => {
    const worst = weather.worst(hour);
    const item = items
      .filter(({ vital }) => vital)
      .map(({ item: { id }, curve }) => ({ item: id, passages: count - curve[hour]! }))
      .reduce<{ item: string; passages: number } | null>(
        (most, one) => (one.passages > (most?.passages ?? 0) ? one : most),
        null,
      );
    if (worst === null) return item && { item: item.item };
    if (item !== null && item.passages > worst.passages) return { item: item.item };
    const { place } = passage.legs[worst.leg]!;
    return { hindrance: worst.hindrance, place: place ?? null, limit: limitFor(worst.hindrance, limits) };
  };
}

/** The skipper's figure behind a hindrance, in its unit: kn, m or s a metre; null where it has none. */
function limitFor(hindrance: Hindrance, limits: Limits): number | null {
  const figure = {
    wind: limits.wind,
    headwind: limits.headwind,
    gust: limits.gust,
    seas: limits.seas,
    'short seas': limits.periodPerMetre,
  }[hindrance as string];
  return typeof figure === 'number' ? figure : null;
}
