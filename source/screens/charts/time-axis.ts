import { dayWords, momentWords } from '../../words/say.ts';

const SECOND_MS = 1000;
const MINUTE_MS = 60_000;
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
  const [hours = 0, minutes = 0, seconds = 0] = formatOf(zone).format(at).split(':').map(Number);
  return (
    hours * HOUR_MS + minutes * MINUTE_MS + seconds * SECOND_MS + (((at % SECOND_MS) + SECOND_MS) % SECOND_MS)
  );
}

/** `Tue`, `4 Sep` or `Sep 2026`, by how many days there are. */
function wordOf(at: number, days: number, zone: string): string {
  if (days <= 12) return momentWords(at, zone).split(' ')[0]!;
  const [day, month, year] = dayWords(at, zone).split(' ');
  return days <= 400 ? `${day} ${month}` : `${month} ${year}`;
}

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  });
  formats.set(zone, format);
  return format;
}
