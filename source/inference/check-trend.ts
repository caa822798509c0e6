import type { Check } from '../boat/check.ts';
import type { CheckRecord } from '../condition/condition.ts';
import { MS_A_DAY } from '../condition/time.ts';
import { cusum } from '../maths/cusum.ts';
import { studentDeviate } from '../maths/student-deviate.ts';
import type { CheckTrend } from './belief.ts';

/** Model 5, after NIST/SEMATECH 6.3.2.3: in sds. */
const CHART = { slack: 0.5, limit: 5 };
/** Chance alone gives such a chart one signal in 465 answers (NIST/SEMATECH 6.3.2.3), which for a dozen checks a day is one a month: so far apart, in sds, must what was and what is be as well. Judgement, measured. */
const BORNE_OUT = 4;
/** So many of the last answers are looked at: a year of mornings tells what is usual. Judgement. */
const REMEMBERED = 400;
/** So many answers are learned from before any is called out of line. Judgement. */
const LEARNING = 8;
/** News for so long from the answer that showed it. Judgement: as a loss that changed (model 3.5). */
const NEWS_MS = 30 * MS_A_DAY;

/**
 * Whether the number a check is answered with has changed by itself, towards a limit of the check where it has but one; null where it has not, or not of late. A CUSUM over how far each answer lies from
 * those before it, made standard normal by Student's distribution, so that nothing need be known of it beforehand (D. M. Hawkins, "Self-starting CUSUM charts for location and scale", The Statistician 36
 * (1987), 299-316; from memory). From a change on all is learned anew.
 */
export function trendOf(check: Check, { answers }: CheckRecord, now: number): CheckTrend | null {
  const told = answers.flatMap(({ at, value }) => (value === null ? [] : [{ at, value }])).slice(-REMEMBERED);
  const least = leastSd(told.map(({ value }) => value));
  let last: CheckTrend | null = null;
  let from = 0;
  for (;;) {
    const part = told.slice(from);
    const values = part.map(({ value }) => value);
    const change = changeIn(values, least);
    if (change === null) return last;
    const { since, seen, way } = change;
    const isNews = now - part[seen]!.at < NEWS_MS && matters(check, way);
    const [before, after] = [mean(values.slice(0, since)), mean(values.slice(since))];
    last = isNews ? { at: part[since]!.at, way, before, after } : null;
    from += since;
  }
}

interface Change {
  /** The answer from which on it is another, and the one that showed it. */
  readonly since: number;
  readonly seen: number;
  readonly way: CheckTrend['way'];
}

/** The first change: a signal of the chart that all answers since bear out. */
function changeIn(values: readonly number[], least: number): Change | null {
  let tried = 0;
  for (const [seen, { signal }] of cusum(deviates(values, least), CHART).entries()) {
    if (signal === null || signal.since === tried) continue;
    tried = signal.since;
    const apart = apartAt(values, signal.since, least);
    if (signal.way === 'up' ? apart >= BORNE_OUT : apart <= -BORNE_OUT) return { ...signal, seen };
  }
  return null;
}

/** How far what was answered from one answer on lies from what was before it, in normal deviates. */
function apartAt(values: readonly number[], since: number, least: number): number {
  const [before, after] = [values.slice(0, since), values.slice(since)];
  const [was, is] = [mean(before), mean(after)];
  const squares =
    before.reduce((sum, value) => sum + (value - was) ** 2, 0) +
    after.reduce((sum, value) => sum + (value - is) ** 2, 0);
  const freedom = values.length - 2;
  const sd = Math.max(least, Math.sqrt(squares / freedom));
  return studentDeviate((is - was) / (sd * Math.sqrt(1 / before.length + 1 / after.length)), freedom);
}

/** How far each answer lies from those before it, in normal deviates; 0 while these are learned from. */
function deviates(values: readonly number[], least: number): readonly number[] {
  let [sum, squares] = [0, 0];
  const first = values[0] ?? 0;
  return values.map((value, n) => {
    const apart = value - first;
    const average = sum / n;
    const sd = Math.max(least, Math.sqrt(Math.max(0, squares - n * average * average) / (n - 1)));
    sum += apart;
    squares += apart * apart;
    if (n < LEARNING || sd === 0) return 0;
    return studentDeviate(((apart - average) / sd) * Math.sqrt(n / (n + 1)), n - 1);
  });
}

/** Answers are rounded, and may all be the same for long: half the smallest step between two of them is the least they stray by. Judgement. */
function leastSd(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const steps = sorted.slice(1).map((value, i) => value - sorted[i]!);
  return steps.reduce((least, step) => (step > 0 ? Math.min(least, step) : least), Infinity) / 2;
}

/** Away from its one limit is no trouble. */
function matters({ atLeast, atMost }: Check, way: CheckTrend['way']): boolean {
  if (atLeast === undefined || atMost === undefined)
    return way === 'up' ? atLeast === undefined : atMost === undefined;
  return true;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
