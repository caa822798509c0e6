import { tidy } from '../units.ts';

/** No wind (knots), sea (metres) or period (seconds) is read above these: it would be something else. */
export const MOST_KN = 250;
export const MOST_M = 40;
export const MOST_S = 60;

/** Figures as one clause gives them, in knots or metres. `upTo`: only an upper bound was said, and `low` is 0. */
export interface Figure {
  readonly low: number;
  readonly high: number;
  readonly upTo: boolean;
  /** The higher figure was said first. */
  readonly backwards?: true;
}

/** Reads what `figures` of patterns.ts matched; `unitIn` says how many knots or metres one of its unit is. */
export function figureIn(phrase: string, unitIn: (unit: string) => number | null): Figure {
  const unit = /(?:[A-Z/]+|')$/.exec(phrase.replace(/ OR (?:LESS|UNDER|BELOW)$/, ''))?.[0] ?? '';
  const each = unitIn(unit) ?? 1;
  const [first = 0, second] = (phrase.match(/\d+(?:\.\d+)?/g) ?? []).map((digits) =>
    tidy(Number(digits) * each),
  );
  if (second === undefined) {
    const upTo = /^(?:UP TO|TO|LESS THAN|UNDER|BELOW|NOT EXCEEDING) | OR (?:LESS|UNDER|BELOW)$/.test(phrase);
    return { low: upTo ? 0 : first, high: first, upTo };
  }
  if (first <= second) return { low: first, high: second, upTo: false };
  return { low: second, high: first, upTo: false, backwards: true };
}

/** Both ends as counted on: an upper bound alone is taken whole, never as a range that begins at nothing. */
export function counted({ low, high, upTo }: Figure): readonly [low: number, high: number] {
  return [upTo ? high : low, high];
}

/** The worst of several: the highest of the low ends and the highest of the high ones. Null of none. */
export function worst(figures: readonly Figure[]): readonly [low: number, high: number] | null {
  if (figures.length === 0) return null;
  const ends = figures.map(counted);
  return [Math.max(...ends.map(([low]) => low)), Math.max(...ends.map(([, high]) => high))];
}
