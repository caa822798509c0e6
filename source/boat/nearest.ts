import { distance } from 'fastest-levenshtein';

/** Longer words than this are nobody's slip of the finger, and not worth the time to compare. */
const LONGEST = 64;

/** The name nearest to what was written, or undefined where none is near enough to be a slip: 2 letters off, 1 in a short word. Case and marks between letters do not count. */
export function nearest(written: string, names: Iterable<string>): string | undefined {
  if (written.length > LONGEST) return undefined;
  let best: string | undefined;
  let bestSlips = Number.POSITIVE_INFINITY;
  for (const name of names) {
    if (name.length > LONGEST) continue;
    const slips = slipsBetween(fold(written), fold(name));
    if (slips < bestSlips) {
      best = name;
      bestSlips = slips;
    }
  }
  return best !== undefined && bestSlips <= mostSlips(fold(best)) ? best : undefined;
}

function fold(word: string): string {
  return word.toLowerCase().replace(/[\s_-]+/g, '');
}

/** Levenshtein distance, but the same letters in another order are one slip. */
function slipsBetween(a: string, b: string): number {
  const slips = distance(a, b);
  return slips === 2 && sorted(a) === sorted(b) ? 1 : slips;
}

function sorted(word: string): string {
  return [...word].sort().join('');
}

function mostSlips(name: string): number {
  if (name.length <= 2) return 0;
  return name.length <= 4 ? 1 : 2;
}
