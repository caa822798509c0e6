import type { Anode } from '../boat/anode.ts';
import type { AnodeBelief } from '../inference/belief.ts';
import { always, type Latest } from './latest.ts';
import type { Passages } from './passages.ts';

/** The latest departures after which an anode's share is still at its limit at the end of the stretch (model 4). A new one starts from a share of 1. */
export function anodeLatest(
  anode: Anode,
  belief: AnodeBelief | null,
  renewed: boolean,
  passages: Passages,
): Latest {
  const { count, hours, reserveDays, streamOf } = passages;
  const latest = always(count);
  if (belief === null || (belief.flakes && !renewed))
    return belief === null ? latest : latest.fill(-Infinity);
  const { share, wear } = belief.draw(count, (part) => streamOf(`anode/${anode.id}/${part}`));
  for (let i = 0; i < count; i += 1) {
    const spare = (renewed ? 1 : share[i]!) - anode.limit - wear[i]! * (hours[i]! / 24 + reserveDays);
    if (spare < 0) latest[i] = -Infinity;
    else if (wear[i]! > 0) latest[i] = (24 * spare) / wear[i]!;
  }
  return latest;
}
