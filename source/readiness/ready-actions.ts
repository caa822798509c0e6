import { type Boat, itemsOf } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { buying, type Candidate, candidatesFor, takenOf } from './actions.ts';
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
  const candidates = itemsOf(boat).flatMap((item) => candidatesFor(item, condition, beliefs));
  const owed = items.flatMap((one) => owedFor(one, candidates));
  const work = candidates.filter((candidate) => !owed.includes(candidate) && helps(candidate, items));
  const aboard = (spare: string) => condition.spares.get(spare)?.count ?? 0;
  const taken = (spare: string) => takenOf([...owed, ...work], spare);
  const bought = boat.spares
    .filter(({ id }) => taken(id) > aboard(id) || fills(id, items, vital))
    .flatMap((spare) => buying(spare, condition, taken(spare.id)) ?? []);
  const { count, threshold } = passages;
  return toGetReady({
    vital,
    passages: count,
    hour,
    enough: threshold * count,
    owed,
    candidates: [...work, ...bought],
    aboard,
  });
}

/** Whatever the score: a look that is owed where not having it bars leaving, and what puts right a vital thing past its limit. */
function owedFor(
  { item, vital, finding }: JudgedItem,
  candidates: readonly Candidate[],
): readonly Candidate[] {
  if (vital && finding.pastLimit.length > 0) {
    const leaks = finding.pastLimit.some(({ why }) => why === 'fuel leak');
    const isLow = finding.pastLimit.some(({ why }) => why !== 'fuel leak');
    return candidates.filter(
      (candidate) => candidate.item === item.id && (candidate.do === 'stop the leak' ? leaks : isLow),
    );
  }
  const bars = finding.unseenBars === 'always' || (vital && finding.unseenBars === 'when vital');
  if (finding.unseen.length === 0 || !bars) return [];
  return [{ do: 'look', item: item.id, takes: [], minutes: item.minutes ?? 5, pouredL: null, buys: null }];
}

/** The work of a vital item that may fail. */
function helps(candidate: Candidate, items: readonly JudgedItem[]): boolean {
  return candidate.do !== 'look' && mayFail(candidate.item, items);
}

/** A vital spare that may run short, or the stock a vital fluid that may fail goes by. */
function fills(
  spare: string,
  items: readonly JudgedItem[],
  vital: readonly { readonly requirement: Requirement }[],
): boolean {
  return vital.some(
    ({ requirement }) =>
      requirement.stores.includes(spare) && requirement.items.some((id) => mayFail(id, items)),
  );
}

function mayFail(id: string, items: readonly JudgedItem[]): boolean {
  return items.some(({ item, chance, vital }) => item.id === id && vital && chance < 1);
}
