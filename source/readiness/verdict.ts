import type { Boat } from '../boat/boat.ts';
import type { Limits } from '../boat/limits.ts';
import type { Condition } from '../condition/condition.ts';
import { placeFor } from '../forecast/at.ts';
import type { Forecast } from '../forecast/forecast.ts';
import { piecesOf, whereOf } from '../passage/pieces.ts';
import type { Trouble } from '../trouble.ts';
import type { Edge, OnTheLine, Reason, Verdict, Window } from './answer.ts';
import type { JudgedItem } from './judged.ts';
import { weatherBars } from './weather-bars.ts';

export interface VerdictInput {
  readonly boat: Boat;
  readonly condition: Condition;
  readonly limits: Limits;
  readonly items: readonly JudgedItem[];
  readonly forecast: Forecast | null;
  /** Whether the forecast still says something of the passage. */
  readonly forecastReaches: boolean;
  readonly score: number | null;
  readonly boatScore: number;
  readonly windows: readonly Window[];
  /** What stands in the way of leaving now. */
  readonly edgeNow: Edge | null;
  readonly onTheLine: OnTheLine;
  readonly trouble: readonly Trouble[];
}

/** The verdict and its reasons, worst first (model 1). Without a forecast, or one too old, it is never `go`. */
export function reasonsOf(input: VerdictInput): {
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
} {
  const { boatScore, score, onTheLine, limits, trouble } = input;
  const barred = boatReasons(input);
  const weather = weatherReasons(input);
  const reasons: Reason[] = [...barred];
  if (onTheLine !== null) {
    const near = onTheLine === 'boat' ? boatScore : (score ?? boatScore);
    reasons.push({ reason: 'on the line', which: onTheLine, score: near, threshold: limits[onTheLine] });
  }
  if (trouble.length > 0) reasons.push({ reason: 'log damaged', count: trouble.length });
  if (barred.length === 0) reasons.push({ reason: 'fit' });
  reasons.push(...weather.reasons);
  if (barred.length > 0) return { verdict: 'not ready', reasons };
  return { verdict: weather.goes ? 'go' : 'hold', reasons };
}

/** What bars leaving whatever the weather. */
function boatReasons({ items, boatScore, limits, condition }: VerdictInput): readonly Reason[] {
  const reasons: Reason[] = [];
  if (condition.lastEntryAt === null) reasons.push({ reason: 'nothing entered' });
  if (!items.some(({ vital }) => vital)) reasons.push({ reason: 'nothing vital' });
  const barring = items.filter(bars).sort((a, b) => a.chance - b.chance);
  for (const state of ['unfit', 'unseen'] as const)
    for (const one of barring)
      if (one.state === state) reasons.push({ reason: 'item', item: one.item.id, state });
  if (boatScore < limits.boat && !barring.some(({ state }) => state === 'unfit'))
    reasons.push({ reason: 'boat short', boat: boatScore, threshold: limits.boat });
  return reasons;
}

function bars({ state, vital, finding }: JudgedItem): boolean {
  if (state === 'unfit') return true;
  if (state !== 'unseen') return false;
  return finding.unseenBars === 'always' || (vital && finding.unseenBars === 'when vital');
}

function weatherReasons(input: VerdictInput): {
  readonly goes: boolean;
  readonly reasons: readonly Reason[];
} {
  const { forecast, forecastReaches, boat, condition, limits, score, windows, edgeNow } = input;
  if (condition.passage === null) return { goes: false, reasons: [{ reason: 'no passage' }] };
  if (forecast === null) return { goes: false, reasons: [{ reason: 'no forecast' }] };
  const { bars, said } = weatherBars(forecast, limits, boat, condition);
  if (!forecastReaches || score === null) {
    const speaks = piecesOf(condition.passage).some((piece) => placeFor(forecast, whereOf(piece)) !== null);
    const places = forecast.places.map(({ place }) => place);
    const why: Reason = speaks ? { reason: 'forecast over' } : { reason: 'forecast elsewhere', places };
    return { goes: false, reasons: [...bars, why] };
  }
  if (score >= limits.go)
    return {
      goes: bars.length === 0,
      reasons: [...bars, ...said, ...(bars.length === 0 ? [{ reason: 'go' as const, score }] : [])],
    };
  return {
    goes: false,
    reasons: [
      ...bars,
      { reason: 'under the score', score, threshold: limits.go, edge: edgeNow },
      ...(condition.underWay === null ? windowReasons(windows) : []),
      ...said,
    ],
  };
}

/** Under way none is waited for. */
function windowReasons([window]: readonly Window[]): readonly Reason[] {
  return [window === undefined ? { reason: 'no window' } : { reason: 'waits for window', window }];
}
