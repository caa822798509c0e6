import { Refused } from './refused.ts';

const FOLLOWS = 0;
const AS_BEFORE = 254;
const NONE = 255;

/** The bitmap in force by code table 6.0: the one that follows or stood before in the same message; null where every point has a value. */
export function bitmapFor(indicator: number, held: Uint8Array | null, points: number): Uint8Array | null {
  if (indicator === NONE) return null;
  if (indicator !== FOLLOWS && indicator !== AS_BEFORE)
    throw new Refused({ kind: 'bitmap', name: "a centre's own bitmap" });
  if (!held || held.length * 8 < points)
    throw new Refused({ kind: 'damaged', name: 'a bitmap shorter than its grid' });
  return held;
}

/** How many of the first `points` bits are set. */
export function marks(bitmap: Uint8Array, points: number): number {
  let count = 0;
  for (let i = 0; i < points; i += 1) count += (bitmap[i >> 3]! >> (7 - (i & 7))) & 1;
  return count;
}

/** Puts the values of the marked points where they belong; the others are missing (not a number). */
export function spread(values: Float64Array, bitmap: Uint8Array, points: number): Float64Array {
  const out = new Float64Array(points).fill(Number.NaN);
  let next = 0;
  for (let i = 0; i < points; i += 1) {
    if ((bitmap[i >> 3]! >> (7 - (i & 7))) & 1) {
      out[i] = values[next]!;
      next += 1;
    }
  }
  return out;
}
