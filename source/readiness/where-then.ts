import type { Boat } from '../boat/boat.ts';
import type { WeatherLook } from '../condition/condition.ts';
import type { Where } from '../forecast/at.ts';
import { piecesOf, whereOf } from '../passage/pieces.ts';

/** Where a look at the weather was made, for a forecast: the anchorage, or as far along the passage as she comes at her usual speed. Null where that is not known. */
export function whereThen({ anchorages, passages }: Boat, { where }: WeatherLook): Where | null {
  if (where === null) return null;
  if ('anchorage' in where) {
    const lying = anchorages.find(({ id }) => id === where.anchorage);
    return lying ? { place: lying.name, at: [lying.at[0], lying.at[1]] } : null;
  }
  const passage = passages.find(({ id }) => id === where.passage);
  if (!passage) return null;
  const sailedNm = where.hours * passage.speed.mean;
  const pieces = piecesOf(passage);
  const piece = pieces.find(({ fromNm, nm }) => sailedNm < fromNm + nm) ?? pieces.at(-1)!;
  return whereOf(piece);
}
