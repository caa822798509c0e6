const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const formats = new Map<string, Intl.DateTimeFormat>();

/** Where days begin in the person's zone, each with a word as long as the span allows: `Tue`, `3 Feb`, `Feb`. At most `most` of them. */
export function timeTicks(
  from: number,
  to: number,
  zone: string,
  most: number,
): { at: number; word: string }[] {
  const days = Math.max(1, Math.ceil((to - from) / DAY_MS));
  const every = Math.max(1, Math.ceil(days / Math.max(1, most)));
  const ticks: { at: number; word: string }[] = [];
  let at = dayStart(from, zone);
  for (let day = 0; at <= to && day <= days; day += 1) {
    if (at >= from && day % every === 0) ticks.push({ at, word: wordOf(at, days, zone) });
    at = dayStart(at + DAY_MS + 6 * HOUR_MS, zone);
  }
  return ticks;
}

/** Midnight in the zone at or before the instant; right across a change of the clocks as well. */
function dayStart(at: number, zone: string): number {
  const guess = at - sinceMidnight(at, zone);
  const off = sinceMidnight(guess, zone);
  return off === 0 ? guess : off > DAY_MS / 2 ? guess + DAY_MS - off : guess - off;
}

function sinceMidnight(at: number, zone: string): number {
  const parts = partsOf(at, zone);
  const part = (type: string) => Number(parts.find((one) => one.type === type)?.value ?? 0);
  return (
    part('hour') * HOUR_MS + part('minute') * 60_000 + part('second') * 1000 + (((at % 1000) + 1000) % 1000)
  );
}

function wordOf(at: number, days: number, zone: string): string {
  const parts = partsOf(at, zone);
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? '';
  if (days <= 12) return part('weekday');
  return days <= 400 ? `${part('day')} ${part('month')}` : `${part('month')} ${part('year')}`;
}

function partsOf(at: number, zone: string): Intl.DateTimeFormatPart[] {
  let format = formats.get(zone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      weekday: 'short',
      year: 'numeric',
      month: 'short',
      day: 'numeric',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
      hourCycle: 'h23',
    });
    formats.set(zone, format);
  }
  return format.formatToParts(at);
}
