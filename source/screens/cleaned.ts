import { clean } from '../words/clean.ts';

/** The same value with every text in it safe to draw on one line, so that what is measured is what is drawn. */
export function cleaned<T>(value: T): T {
  if (typeof value === 'string') return clean(value).replace(/[\n\t]+/gu, ' ') as T;
  if (Array.isArray(value)) return value.map(cleaned) as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, cleaned(part)])) as T;
}
