import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Trouble } from '../trouble.ts';
import type { Reason, Verdict } from './answer.ts';
import type { JudgedItem } from './judged.ts';

export interface VerdictInput {
  readonly boat: Boat;
  readonly condition: Condition;
  readonly limits: Boat['limits'];
  readonly items: readonly JudgedItem[];
  readonly boatScore: number;
  readonly onTheLine: boolean;
  readonly trouble: readonly Trouble[];
}

/** The verdict and its reasons, worst first (model 1). Without a forecast it is never `go`. */
export function reasonsOf(input: VerdictInput): {
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
} {
  const { boatScore, onTheLine, limits, condition, trouble } = input;
  const barred = boatReasons(input);
  const reasons: Reason[] = [...barred];
  if (onTheLine) reasons.push({ reason: 'on the line', boat: boatScore, threshold: limits.boat });
  if (trouble.length > 0) reasons.push({ reason: 'log damaged', count: trouble.length });
  if (barred.length === 0) reasons.push({ reason: 'fit' });
  if (condition.passage === null) reasons.push({ reason: 'no passage' });
  reasons.push({ reason: 'no forecast' });
  return { verdict: barred.length > 0 ? 'not ready' : 'hold', reasons };
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
