import type { Boat } from '../boat/boat.ts';
import { type Entry, itemField } from './entries.ts';

/** Whether an entry names a thing: as its item, as a spare it took from, or as a part of a service. */
export function about(entry: Entry, id: string): boolean {
  const field = itemField[entry.kind];
  if (field !== undefined && entry[field as keyof Entry] === id) return true;
  if ('from' in entry && entry.from === id) return true;
  return entry.kind === 'service' && (entry.uses ?? []).some(({ spare }) => spare === id);
}

/** The ids of all that entries can be about, in the order of the boat file. */
export function idsOf(boat: Boat): readonly string[] {
  const { engines, fluids, anodes, spares, services, checks, dated } = boat;
  return [engines, fluids, anodes, spares, services, checks, dated].flat().map(({ id }) => id);
}
