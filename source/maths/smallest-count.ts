import { assert } from '../trouble.ts';

/** The smallest whole number from 0 up for which `holds` is true, where it stays true from there on: doubling, then halving. */
export function smallestCount(holds: (count: number) => boolean): number {
  if (holds(0)) return 0;
  let fails = 0;
  let works = 1;
  while (!holds(works)) {
    fails = works;
    works *= 2;
    assert(works < Number.MAX_SAFE_INTEGER, 'no count is enough');
  }
  while (works - fails > 1) {
    const between = Math.floor((fails + works) / 2);
    if (holds(between)) works = between;
    else fails = between;
  }
  return works;
}
