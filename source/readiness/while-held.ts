import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { type Candidate, candidatesFor, minutesOf, takenOf } from './actions.ts';
import type { Action } from './answer.ts';
import { sizeOf } from './bits.ts';
import { doable } from './doable.ts';
import type { JudgedItem } from './judged.ts';
import type { Passages } from './passages.ts';
import { heldIn } from './room.ts';
import { dueOf, serviceRooms } from './services.ts';

/** Within the stretch more often than not. */
const LIKELY = 0.5;

/** What is done in any case, the score as it is, and how long she waits: Infinity where nobody knows, 0 where nothing holds her. */
interface Held {
  readonly already: readonly Action[];
  readonly boatScore: number;
  readonly waitMinutes: number;
}

/**
 * Worth doing while held (model 6): services due, and anodes likely to reach their limit, within the stretch, with their parts aboard, those taken by the work before them gone, as many of them as fit the wait.
 * What is to be done anyway to get ready comes before it and is left out; the boat's score stays what that makes it, since none of this is vital.
 */
export function whileHeld(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  passages: Passages,
  items: readonly JudgedItem[],
  { already, boatScore, waitMinutes }: Held,
): readonly Action[] {
  const comesDue = ({ item, chance, finding }: JudgedItem): boolean => {
    if (item.kind === 'anode') return chance < LIKELY || finding.pastLimit.length > 0;
    if (item.kind !== 'service') return false;
    const atDue = { ...item, graceHours: 0, graceDays: 0 };
    const rooms = serviceRooms(atDue, dueOf(boat, item, condition), false, passages);
    return rooms.some((room) => sizeOf(heldIn([room], passages)(0)) < LIKELY * passages.count);
  };
  const work = items
    .filter((one) => comesDue(one) && !already.some(({ item }) => item === one.item.id))
    .flatMap(({ item }) => candidatesFor(item, condition, beliefs));
  const leftOf = (spare: string) => (condition.spares.get(spare)?.count ?? 0) - takenOf(already, spare);
  return fitting([...doable(work, leftOf).values()], waitMinutes - minutesOf(already)).map(
    ({ do: what, item, takes, buys, minutes }) => ({
      do: what,
      item,
      takes,
      buys,
      minutes,
      boatScoreAfter: already.at(-1)?.boatScoreAfter ?? boatScore,
    }),
  );
}

/** In order, leaving out what does not fit in the minutes left. */
function fitting(work: readonly Candidate[], minutes: number): readonly Candidate[] {
  let left = minutes;
  return work.filter((candidate) => {
    if (candidate.minutes > left) return false;
    left -= candidate.minutes;
    return true;
  });
}
