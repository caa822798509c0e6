import type { Anode } from '../boat/anode.ts';
import type { AnodeBelief } from '../inference/belief.ts';
import type { Passages } from './passages.ts';
import type { Room } from './room.ts';

/** What is left of an anode above its limit, as a share (model 4). A new one starts from a share of 1; one that flakes is finished. */
export function anodeRoom(anode: Anode, belief: AnodeBelief, renewed: boolean, passages: Passages): Room {
  const { count, hours, reserveDays, streamOf } = passages;
  const { share, wear } = belief.draw(count, (part) => streamOf(`anode/${anode.id}/${part}`));
  const finished = belief.flakes && !renewed;
  return {
    at0: share.map((left, i) =>
      finished ? -1 : (renewed ? 1 : left) - anode.limit - wear[i]! * (hours[i]! / 24 + reserveDays),
    ),
    anHour: wear.map((aDay) => aDay / 24),
    anEngineHour: null,
    engines: [],
  };
}
