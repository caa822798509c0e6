const DAY = 86_400_000;

/** What the clocks of an IANA zone show at an instant (ms since 1970 UTC), as if they showed UTC. */
export function wallOf(at: number, zone: string): number {
  const format = formatOf(zone);
  const part = new Map(format.formatToParts(at).map(({ type, value }) => [type, Number(value)]));
  const [year, month, day, hour, minute, second] = (
    ['year', 'month', 'day', 'hour', 'minute', 'second'] as const
  ).map((name) => part.get(name) ?? 0);
  // As by itself `Date.UTC` takes the year 50 for 1950.
  const wall = new Date(Date.UTC(2000, 0, 1, hour!, minute!, second!));
  return wall.setUTCFullYear(year!, month! - 1, day!) + (((at % 1000) + 1000) % 1000);
}

/**
 * The instant at which clocks in the zone show `wall`; the first where the hour comes twice, null where it is skipped. An offset is at most 14 h, so the one a
 * day before and the one a day after are the only two it can be.
 */
export function instantOf(wall: number, zone: string): number | null {
  const offsets = [wall - DAY, wall + DAY].map((near) => wallOf(near, zone) - near);
  const found = offsets.map((offset) => wall - offset).filter((at) => wallOf(at, zone) === wall);
  return found.length > 0 ? Math.min(...found) : null;
}

/** Whether it is the name of a zone. */
export function isZone(name: string): boolean {
  try {
    formatOf(name);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** Making a format costs a hundred times what using it does, and a boat has a zone or two. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
    hourCycle: 'h23',
  });
  formats.set(zone, format);
  return format;
}
