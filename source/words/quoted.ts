import { cleanLine } from './clean.ts';

/** A text in double quotes, fit for a sentence. */
export function quoted(text: string): string {
  return `"${cleanLine(text)}"`;
}

/** A value of a file or an entry as a sentence shows it: text in quotes, groups and lists by what they are. */
export function sayValue(value: unknown): string {
  if (typeof value === 'string') return quoted(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'a group in curly brackets';
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return 'a number too large';
  if (value === undefined) return 'not there';
  return cleanLine(String(value));
}
