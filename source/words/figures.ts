import { assert } from '../trouble.ts';

const LAST_INSTANT = Date.UTC(9999, 11, 31, 23, 59, 59);

/** The number at 6 significant digits, as every figure of a document is given. */
export function six(value: number): number {
  assert(Number.isFinite(value), `a figure that is ${value}`);
  return Number(value.toPrecision(6));
}

export function sixOrNull(value: number | null): number | null {
  return value === null ? null : six(value);
}

/** ms since 1970 UTC as `2026-02-03T07:40:00Z`, to the second. What lies past the year 9999, "never" included, reads as the end of that year. */
export function instant(at: number): string {
  assert(!Number.isNaN(at), 'an instant that is not a number');
  const kept = Math.min(at, LAST_INSTANT);
  return `${new Date(Math.round(kept / 1000) * 1000).toISOString().slice(0, 19)}Z`;
}
