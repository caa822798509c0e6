import { allBits, type Bits } from './bits.ts';
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

/**
 * The passages in which all rooms hold, when leaving at any hour. In most passages they hold even when she leaves last and motors most: only the
 * others are looked at for each hour.
 */
export function heldIn(rooms: readonly Room[], passages: Passages): (hour: number) => Bits {
  const unsure = rooms.map((room) => unsureIn(room, passages));
  return (hour) => {
    const held = allBits(passages.count);
    for (const [place, room] of rooms.entries()) dropFailing(held, room, unsure[place]!, hour, passages);
    return held;
  };
}

function unsureIn({ at0, anHour, anEngineHour, engines }: Room, passages: Passages): Uint32Array {
  const most = anEngineHour === null ? null : passages.mostMotored(engines);
  const unsure = new Uint32Array(at0.length);
  let found = 0;
  for (let i = 0; i < at0.length; i += 1) {
    const left = at0[i]! - anHour[i]! * passages.lastHour;
    if (left >= (most === null ? 0 : anEngineHour![i]! * most[i]!)) continue;
    unsure[found] = i;
    found += 1;
  }
  return unsure.subarray(0, found);
}

function dropFailing(
  held: Bits,
  { at0, anHour, anEngineHour, engines }: Room,
  unsure: Uint32Array,
  hour: number,
  passages: Passages,
): void {
  const motored = anEngineHour === null ? null : passages.motoredBy(engines, hour);
  for (let place = 0; place < unsure.length; place += 1) {
    const i = unsure[place]!;
    const left = at0[i]! - anHour[i]! * hour;
    if (left >= (motored === null ? 0 : anEngineHour![i]! * motored[i]!)) continue;
    held[i >>> 5] = held[i >>> 5]! & ~(1 << (i & 31));
  }
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
