import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { allCandidates, type Candidate } from './actions.ts';
import type { Action } from './answer.ts';
import type { Judged, JudgedItem } from './judged.ts';
import type { Requirement } from './requirements.ts';
import { toGetReady } from './to-get-ready.ts';

/** The way to get ready for leaving at that hour: what is owed first, then the shortest list that suffices. */
export function readyActions(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  { requirements, items, passages }: Judged,
  hour: number,
): { actions: readonly Action[]; suffices: boolean } {
  const vital = requirements.all
    .map((requirement) => ({
      requirement,
      places: requirement.items.flatMap((id, place) =>
        items.some(({ item, vital }) => item.id === id && vital) ? [place] : [],
      ),
    }))
    .filter(({ places }) => places.length > 0);
  const candidates = allCandidates(boat, condition, beliefs);
  const owed = items.flatMap((one) => owedFor(one, candidates));
  const helpful = candidates.filter(
    (candidate) =>
      !owed.includes(candidate) &&
      helps(
        candidate,
        items,
        vital.map(({ requirement }) => requirement),
      ),
  );
  const { count, threshold } = passages;
  return toGetReady({
    vital,
    passages: count,
    hour,
    enough: threshold * count,
    owed,
    candidates: helpful,
  });
}

/** Whatever the score: a look that is owed where not having it bars leaving, and what puts right a vital thing past its limit. */
function owedFor(
  { item, vital, finding }: JudgedItem,
  candidates: readonly Candidate[],
): readonly Candidate[] {
  if (vital && finding.pastLimit.length > 0)
    return candidates.filter((candidate) => candidate.item === item.id);
  const bars = finding.unseenBars === 'always' || (vital && finding.unseenBars === 'when vital');
  if (finding.unseen.length === 0 || !bars) return [];
  return [{ do: 'look', item: item.id, takes: [], minutes: item.minutes ?? 5, pouredL: null, buys: null }];
}

/** Only what a vital item that may fail asks for: its own work, or filling the stock it goes by. */
function helps(candidate: Candidate, items: readonly JudgedItem[], vital: readonly Requirement[]): boolean {
  const mayFail = (id: string) =>
    items.some(({ item, chance, vital }) => item.id === id && vital && chance < 1);
  if (mayFail(candidate.item) && candidate.do !== 'look') return true;
  return (
    candidate.buys !== null &&
    vital.some(({ stores, items: ids }) => stores.includes(candidate.item) && ids.some(mayFail))
  );
}
