import type { Boat } from '../boat/boat.ts';
import type { Spare } from '../boat/spare.ts';

/** The name of whatever has this id in the boat file; the id itself where nothing has. */
export function nameOf(boat: Boat, id: string): string {
  const { engines, fluids, anodes, spares, services, checks, dated, passages, anchorages } = boat;
  for (const list of [engines, fluids, anodes, spares, services, checks, dated, passages, anchorages]) {
    const found = list.find((one) => one.id === id);
    if (found) return found.name;
  }
  return id;
}

/** What a spare is counted in; pieces where the boat has no such spare. */
export function unitOf(boat: Boat, spare: string): Spare['unit'] {
  return boat.spares.find(({ id }) => id === spare)?.unit ?? 'each';
}
