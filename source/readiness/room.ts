import { type Bits, noBits } from './bits.ts';
import type { Latest } from './latest.ts';
import type { Passages } from './passages.ts';

/**
 * What is left of something at the end of the stretch, in its own unit, one value a passage: leaving at hour d, `at0 - anHour d - anEngineHour motored(d)`.
 * It holds while that is not below zero.
 */
export interface Room {
  readonly at0: Float64Array;
  readonly anHour: Float64Array;
  /** Null where motoring takes nothing of it. */
  readonly anEngineHour: Float64Array | null;
  readonly engines: readonly string[];
}

/** The latest departures, where the hours motored do not depend on when she leaves; null where they do. */
function latestOf(room: Room, passages: Passages): Latest | null {
  const { at0, anHour, anEngineHour, engines } = room;
  if (anEngineHour !== null && !passages.motoringIsFixed) return null;
  const motored = anEngineHour === null ? null : passages.motoredBy(engines, 0);
  const latest = new Float64Array(at0.length);
  for (let i = 0; i < latest.length; i += 1) {
    const left = motored === null ? at0[i]! : at0[i]! - anEngineHour![i]! * motored[i]!;
    latest[i] = left < 0 ? -Infinity : anHour[i]! > 0 ? left / anHour[i]! : Infinity;
  }
  return latest;
}

/** The passages in which it holds when leaving at that hour. */
export function heldAt(room: Room, hour: number, passages: Passages): Bits {
  const { at0, anHour, anEngineHour, engines } = room;
  const motored = anEngineHour === null ? null : passages.motoredBy(engines, hour);
  const bits = noBits(at0.length);
  for (let word = 0, i = 0; word < bits.length; word += 1) {
    let held = 0;
    for (let bit = 0; bit < 32; bit += 1, i += 1) {
      const left = at0[i]! - anHour[i]! * hour;
      if (left >= (motored === null ? 0 : anEngineHour![i]! * motored[i]!)) held |= 1 << bit;
    }
    bits[word] = held;
  }
  return bits;
}

/** Both rooms must hold: the earlier of their latest departures; null where either depends on motoring that is not fixed. */
export function latestOfAll(rooms: readonly Room[], passages: Passages): Latest | null {
  const all = rooms.map((room) => latestOf(room, passages));
  const [first, ...others] = all;
  if (first === undefined || first === null || others.includes(null)) return null;
  for (const other of others)
    for (let i = 0; i < first.length; i += 1) first[i] = Math.min(first[i]!, other![i]!);
  return first;
}
