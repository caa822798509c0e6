import { instantOf, wallOf } from '../maths/wall-clock.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const LONGEST = 40;

/**
 * A moment as people type it, as ms since 1970 UTC; null where it cannot be understood. `2026-02-03T07:40Z` or with an offset is itself; without one it is
 * in `zone` (an IANA name), as are `2026-02-03`, `07:40` or `7:40 am` (today), `yesterday 18:00`, `now`, `20 min ago`, `3 h ago`, `2 days ago`.
 * Where clocks go back and an hour comes twice, the first is meant.
 */
export function momentFrom(typed: string, now: number, zone: string): number | null {
  const text = typed.trim().toLowerCase();
  if (text.length > LONGEST) return null;
  if (text === 'now') return now;
  return instantFrom(text) ?? ago(text, now) ?? inZone(text, now, zone);
}

/** The same of one typed with its offset, `2026-02-03T07:40Z`, which is the same in every zone. */
export function instantFrom(typed: string): number | null {
  const text = typed.trim().toLowerCase();
  const found = /^(\d{4}-\d\d-\d\d)[t ](\d\d:\d\d(?::\d\d(?:\.\d{1,3})?)?)(z|[+-]\d\d:\d\d)$/.exec(text);
  if (!found || !isDate(found[1]!)) return null;
  const at = Date.parse(`${found[1]}T${found[2]}${found[3]!.toUpperCase()}`);
  return Number.isNaN(at) ? null : at;
}

function ago(text: string, now: number): number | null {
  const found = /^(\d{1,6}(?:[.,]\d{1,3})?) ?(min|minutes?|h|hours?|d|days?) ago$/.exec(text);
  if (!found) return null;
  const unit = found[2]!.startsWith('m') ? MINUTE : found[2]!.startsWith('h') ? HOUR : DAY;
  return now - Math.round(Number(found[1]!.replace(',', '.')) * unit);
}

function inZone(text: string, now: number, zone: string): number | null {
  const found = /^(?:(today|yesterday|\d{4}-\d\d-\d\d)(?:[t ]|$))?(?:(\d{1,2}):(\d\d)(?::(\d\d))?)?$/.exec(
    text24(text),
  );
  if (!found || text === '') return null;
  const [, day, hour = '0', minute = '0', second = '0'] = found;
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return null;
  const date = dateOf(day ?? 'today', now, zone);
  if (date === null) return null;
  const wall = date + Number(hour) * HOUR + Number(minute) * MINUTE + Number(second) * 1000;
  return instantOf(wall, zone);
}

/** `7:40 pm` as `19:40`; what is no such hour stays as it is. */
function text24(text: string): string {
  return text.replace(/(?<!\S)(1[0-2]|0?[1-9])(?::(\d\d))? ?([ap])\.?m\.?$/, (_, hour, minutes, half) => {
    const hours = (Number(hour) % 12) + (half === 'p' ? 12 : 0);
    return `${hours}:${minutes ?? '00'}`;
  });
}

/** Midnight of a day as if its zone were UTC. */
function dateOf(day: string, now: number, zone: string): number | null {
  if (day !== 'today' && day !== 'yesterday') return isDate(day) ? Date.parse(day) : null;
  const today = Math.floor(wallOf(now, zone) / DAY) * DAY;
  return day === 'today' ? today : today - DAY;
}

function isDate(text: string): boolean {
  const at = Date.parse(text);
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(text);
}
