import { numberFrom } from './numbers.ts';

const DAYS: { readonly [unit: string]: number } = { d: 1, day: 1, week: 7, month: 365.25 / 12, year: 365.25 };

/**
 * How often something is used up, as people say it, by the hour or the day: `2 in 1000 h`, `once in 500 hours`, `4 a year`. Null where it is none of these:
 * a bare number is for the caller.
 */
export function rateFrom(typed: string, per: 'hour' | 'day'): number | null {
  const text = typed
    .trim()
    .toLowerCase()
    .replace(/^once\b/, '1');
  const [, times, every, unit] =
    /^(\S+)\s+(?:(?:times\s+)?in\s+(\S+)\s*|(?:an?|per)\s+)(?:engine\s+)?([a-z]+?)s?$/.exec(text) ?? [];
  const count = plain(times);
  const length = every === undefined ? 1 : plain(every);
  const isHour = unit === 'h' || unit === 'hour';
  if (count === null || length === null || length <= 0 || unit === undefined) return null;
  if (per === 'hour') return isHour ? tidy(count / length) : null;
  const days = DAYS[unit];
  return days === undefined ? null : tidy(count / (length * days));
}

function plain(text: string | undefined): number | null {
  const read = numberFrom(text ?? '');
  return read === null || read === 'ambiguous' || read.rest !== '' ? null : read.value;
}

function tidy(value: number): number {
  return Number(value.toPrecision(4));
}
