import { isWholeDay, type Span, spanOf } from './day-part.ts';
import type { Issue } from './issue-time.ts';

const HOUR = 3_600_000;
/** A first period said to begin this soon after the issue begins with it: nothing else is said of the hours between. */
const SOON = 6 * HOUR;

export interface Period {
  readonly label: string;
  readonly prose: string;
}

/** A period with its times, ms since 1970 UTC; null where its label names no time that follows the one before. */
export interface TimedPeriod extends Period {
  readonly span: Span | null;
}

/**
 * Gives periods their times, in order. The first begins with the issue. A day without a night of its own covers both, 24 hours; except the last day of a near-shore
 * forecast, which goes no further than that day (common practice, from memory).
 */
export function timedPeriods(
  periods: readonly Period[],
  issue: Issue,
  nearShore: boolean,
): readonly TimedPeriod[] {
  const ahead = issue.aheadMinutes * 60_000;
  const issued = issue.at + ahead;
  let after = issued;
  return periods.map((period, i) => {
    const said = spanOf(period.label, { issued, after });
    if (!said) return { ...period, span: null };
    const next = periods[i + 1];
    const hasNight =
      next !== undefined && (spanOf(next.label, { issued, after: said.to })?.from ?? said.to) === said.to;
    const isLast = next === undefined;
    const whole = isWholeDay(period.label) && !hasNight && !(isLast && nearShore);
    const from = i === 0 && said.from - issued <= SOON ? issued : Math.max(said.from, after);
    const to = whole ? said.to + 12 * HOUR : said.to;
    if (to <= from) return { ...period, span: null };
    after = to;
    return { ...period, span: { from: from - ahead, to: to - ahead } };
  });
}
