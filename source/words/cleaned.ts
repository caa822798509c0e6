import { clean, cleanLine } from './clean.ts';

/** Longer than any sentence made here of names of boat.json. */
const MOST_LETTERS = 2000;

/** The same value with every text in it safe to draw on one line; texts under a key named in `keep` may have several. */
export function cleaned<T>(value: T, keep: readonly string[] = [], several = false): T {
  if (typeof value === 'string') return (several ? clean(value) : cleanLine(value, MOST_LETTERS)) as T;
  if (Array.isArray(value)) return value.map((one) => cleaned(one, keep, several)) as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [key, cleaned(part, keep, keep.includes(key))]),
  ) as T;
}
