/** Chances people can picture, least first. Tenths where they will do, so that two are compared at a glance. */
const SPOKEN: readonly (readonly [part: number, all: number])[] = [
  [1, 100],
  [1, 50],
  [1, 20],
  [1, 10],
  [2, 10],
  [1, 4],
  [3, 10],
  [1, 3],
  [4, 10],
  [5, 10],
  [6, 10],
  [2, 3],
  [7, 10],
  [3, 4],
  [8, 10],
  [17, 20],
  [9, 10],
  [19, 20],
  [49, 50],
  [99, 100],
];

/** From here up nothing more is worth saying; from there down likewise. */
const NEARLY_ALL = 0.995;
const ALMOST_NONE = 0.005;

/** A chance of something good, 0..1, as it is said aloud: `9 in 10`. Never better than it is: what lies between two is said as the lesser. */
export function chanceWords(chance: number): string {
  if (chance >= NEARLY_ALL) return 'nearly all';
  if (chance <= ALMOST_NONE) return 'almost none';
  const [part, all] = SPOKEN.findLast(([some, of]) => chance >= some / of - 1e-9) ?? [1, 100];
  return part === 1 && chance < 0.01 ? 'less than 1 in 100' : `${part} in ${all}`;
}
