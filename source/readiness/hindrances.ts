/** What can stand in the way of a departure. The place in the list is its code. */
export const HINDRANCES = [
  'none',
  'wind',
  'headwind',
  'sector',
  'gust',
  'seas',
  'short seas',
  'squalls',
  'warning',
  'small craft',
  'not said',
  'past forecast',
  'daylight',
  'gate',
] as const;
export type Hindrance = (typeof HINDRANCES)[number];
const codes = new Map(HINDRANCES.map((hindrance, place) => [hindrance, place]));

export function code(hindrance: Hindrance): number {
  return codes.get(hindrance)!;
}

/** Bits of a code beside an hour. */
export const CODE_BITS = 4;
