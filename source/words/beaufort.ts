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

/** A wind force as typed, `f6`, `force 6`, `bft 6` or a range `f5-6`: the middle of its knots. Null where it is none. */
export function beaufortKn(typed: string): number | null {
  const found = /^(?:f|force|bf|bft|beaufort) ?(\d{1,2})(?: ?(?:-|\u2013|to) ?(\d{1,2}))?$/i.exec(
    typed.trim(),
  );
  if (!found) return null;
  const lower = FORCES[Number(found[1])];
  const upper = FORCES[Number(found[2] ?? found[1])];
  return lower && upper && lower[0] <= upper[1] ? (lower[0] + upper[1]) / 2 : null;
}
