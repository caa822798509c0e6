import { better, type Stream } from './layers.ts';

/** What a layer gives for one position. */
export interface Sample {
  readonly from: number;
  readonly to: number;
  /** East and north parts of a wind, or one value; interpolated each for itself. */
  readonly parts: readonly number[];
  /** How far off the point it is taken from lies, nm. */
  readonly awayNm: number;
  readonly stream: Stream;
}

/** Between times further apart nothing is said: global models go by 12 hours at their longest leads (judgement). */
const MOST_GAP_MS = 12 * 3_600_000;

/** The samples of one thing at one position in order of time: the best stream, and others before it begins and after it ends. */
export function seriesOf(samples: readonly Sample[]): readonly Sample[] {
  const streams = [...new Set(samples.map(({ stream }) => stream))].sort(better);
  const chosen: Sample[] = [];
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const stream of streams) {
    const more = samples.filter((one) => one.stream === stream && (one.to < first || one.from > last));
    chosen.push(...more);
    for (const { from, to } of more) {
      first = Math.min(first, from);
      last = Math.max(last, to);
    }
  }
  return chosen.sort((a, b) => a.from - b.from || a.to - b.to);
}

/** What a series says of an instant: the shortest span it lies in, or between the instants before and after it. */
export function partsAt(series: readonly Sample[], instant: number): readonly number[] | null {
  let before: Sample | null = null;
  let after: Sample | null = null;
  let within: Sample | null = null;
  for (const sample of series) {
    const span = sample.to - sample.from;
    if (span > 0) {
      if (sample.from > instant || sample.to < instant) continue;
      // At the end of one span and the start of the next, the next.
      if (!within || span < within.to - within.from || within.to === instant) within = sample;
    } else if (sample.from <= instant) before = sample;
    else if (!after) after = sample;
  }
  if (before?.from === instant) return before.parts;
  if (within) return within.parts;
  if (!before || !after || after.from - before.from > MOST_GAP_MS) return null;
  const share = (instant - before.from) / (after.from - before.from);
  return before.parts.length === after.parts.length ? between(before.parts, after.parts, share) : null;
}

function between(a: readonly number[], b: readonly number[], share: number): readonly number[] {
  return a.map((value, i) => value + share * (b[i]! - value));
}
