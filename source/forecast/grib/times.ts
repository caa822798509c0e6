import { Refused } from './refused.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** Units of time both editions share, in ms: code table 4 of edition 1, code table 4.4 of edition 2. Months and longer have no fixed length. */
const UNITS: Readonly<Record<number, number>> = {
  0: MINUTE,
  1: HOUR,
  2: 24 * HOUR,
  10: 3 * HOUR,
  11: 6 * HOUR,
  12: 12 * HOUR,
};
const UNITS_1: Readonly<Record<number, number>> = { 13: 15 * MINUTE, 14: 30 * MINUTE, 254: 1000 };
const UNITS_2: Readonly<Record<number, number>> = { 13: 1000 };

/** Further than edition 1 can say in hours; beyond it a header is damaged. */
const MOST_LEAD = 4000 * 24 * HOUR;

/** A span of time of so many units, in ms. */
export function spanOf(edition: 1 | 2, unit: number, count: number): number {
  const size = UNITS[unit] ?? (edition === 1 ? UNITS_1 : UNITS_2)[unit];
  if (size === undefined) throw new Refused({ kind: 'time', name: `unit of time ${unit}` });
  const span = size * count;
  if (Math.abs(span) > MOST_LEAD) throw new Refused({ kind: 'damaged', name: 'a time beyond any forecast' });
  return span;
}

/** An instant, ms since 1970 UTC, from year, month, day, hour, minute and second; refuses one that does not exist. */
export function instantOf(parts: readonly [number, number, number, number, number, number]): number {
  const [year, month, day, hour, minute, second] = parts;
  const midnight = Date.UTC(year, month - 1, day);
  const real =
    year >= 1950 &&
    year < 2200 &&
    new Date(midnight).getUTCMonth() === month - 1 &&
    day >= 1 &&
    hour <= 24 &&
    minute < 60 &&
    second <= 60;
  if (!real) throw new Refused({ kind: 'damaged', name: 'a date that does not exist' });
  return Date.UTC(year, month - 1, day, hour, minute, second);
}
