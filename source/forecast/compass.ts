const POINTS = 'n nne ne ene e ese se sse s ssw sw wsw w wnw nw nnw'.split(' ');

/** A direction in degrees true as the letters of the nearest of the 16 points: `SW`. */
export function pointLetters(degrees: number): string {
  const turn = Math.round((degrees / 360) * POINTS.length);
  return POINTS[((turn % POINTS.length) + POINTS.length) % POINTS.length]!.toUpperCase();
}

/** Letters whose o is east in some languages and west in others, and the points it could be. */
export interface TwoPoints {
  readonly choices: readonly string[];
}

/**
 * A point of the compass in letters or English words, in degrees true: `sw`, `south-west`, `Southwesterly`, `NNE`. Letters with an o are not guessed:
 * what they could be is given instead. Null where it is no point.
 */
export function pointFrom(typed: string): number | TwoPoints | null {
  const letters = typed
    .slice(0, 30)
    .toLowerCase()
    .replace(/north/g, 'n')
    .replace(/east/g, 'e')
    .replace(/south/g, 's')
    .replace(/west/g, 'w')
    .replace(/[\s-]/g, '')
    .replace(/(?<=[nesw])(erly|ern)$/, '');
  const point = POINTS.indexOf(letters);
  if (point >= 0) return (point * 360) / POINTS.length;
  if (!/^[neswo]{1,3}$/.test(letters) || !letters.includes('o')) return null;
  return { choices: ['e', 'w'].map((o) => letters.replaceAll('o', o)).filter((one) => POINTS.includes(one)) };
}
