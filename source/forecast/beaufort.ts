/**
 * Mean wind of each Beaufort force in whole knots, lowest and highest; force 12 has no highest.
 * The scale as the Met Office prints it; the same in WMO code table 1100 (from memory).
 */
const FORCES: readonly (readonly [least: number, most: number])[] = [
  [0, 0],
  [1, 3],
  [4, 6],
  [7, 10],
  [11, 16],
  [17, 21],
  [22, 27],
  [28, 33],
  [34, 40],
  [41, 47],
  [48, 55],
  [56, 63],
  [64, 64],
];

/** The knots of a range of forces, lowest of the lower to highest of the upper. Null where there are no such forces or they run backwards. */
export function forcesKn(lower: number, upper = lower): readonly [least: number, most: number] | null {
  const least = FORCES[lower];
  const most = FORCES[upper];
  return least && most && lower <= upper ? [least[0], most[1]] : null;
}

/** A wind force as typed, `f6`, `force 6`, `bft 6` or a range `f5-6`: the middle of its knots. Null where it is none. */
export function beaufortKn(typed: string): number | null {
  const found = /^(?:f|force|bf|bft|beaufort) ?(\d{1,2})(?: ?(?:-|\u2013|to) ?(\d{1,2}))?$/i.exec(
    typed.trim(),
  );
  if (!found) return null;
  const range = forcesKn(Number(found[1]), Number(found[2] ?? found[1]));
  return range && (range[0] + range[1]) / 2;
}
