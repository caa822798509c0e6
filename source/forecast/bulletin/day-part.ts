const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** A time from `from` to `to`, in ms of the local clock as if it were UTC. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** `issued` and `after` (the end of what came before) in ms of the local clock as if it were UTC. */
export interface Clock {
  readonly issued: number;
  readonly after: number;
}

const WEEKDAYS = ['SUN', 'MON', 'TUE', 'WED', 'THU', 'FRI', 'SAT'];
const WEEKDAY = '(?:SUN|MON|TUE|WED|THU|FRI|SAT)(?:DAY|S|SDAY|NESDAY|RS|RSDAY|URDAY)?';
/** Hours of the day each part runs from and to: day and night change at six, as US marine texts have it (from memory). */
const PARTS: { readonly [part: string]: readonly [from: number, to: number] } = {
  DAY: [6, 18],
  MORNING: [6, 12],
  AFTERNOON: [12, 18],
  EVENING: [18, 24],
  NIGHT: [18, 30],
  OVERNIGHT: [24, 30],
};
const ANCHOR = new RegExp(
  `^(?:(?<day>TODAY|TONIGHT|OVERNIGHT|TOMORROW|THIS|${WEEKDAY})(?: (?<part>MORNING|AFTERNOON|EVENING|NIGHT))?|(?<alone>MORNING|AFTERNOON|EVENING|NIGHT))$`,
);
const TRIMMINGS = /\b(?:THE|REST OF|REMAINDER OF|LATE|EARLY|MID|IN)\b/g;

/**
 * The time a period's label names: `TODAY`, `REST OF TONIGHT`, `SAT NIGHT`, `TONIGHT THROUGH THU NIGHT`, `SUN AND MON`. Weekdays are looked for from the end of
 * the period before on. Null where the label names no time.
 */
export function spanOf(label: string, clock: Clock): Span | null {
  const anchors = label
    .toUpperCase()
    .replace(/[.,]/g, ' ')
    .replace(TRIMMINGS, ' ')
    .split(/\b(?:THROUGH|THRU|AND|TO|INTO)\b|-/)
    .map((one) => one.replace(/\s+/g, ' ').trim());
  const spans: Span[] = [];
  for (const anchor of anchors) {
    const span = anchorSpan(anchor, { ...clock, after: spans[0]?.from ?? clock.after });
    if (!span) return null;
    spans.push(span);
  }
  const [first] = spans;
  return first ? { from: first.from, to: Math.max(...spans.map(({ to }) => to)) } : null;
}

/** Whether the label is a whole day by itself, which may stand for its night as well. */
export function isWholeDay(label: string): boolean {
  return new RegExp(`^(?:TODAY|TOMORROW|(?:[A-Z]+ (?:AND|THROUGH|THRU|TO) )?${WEEKDAY})$`).test(
    label.toUpperCase().trim(),
  );
}

function anchorSpan(anchor: string, { issued, after }: Clock): Span | null {
  const found = ANCHOR.exec(anchor)?.groups;
  if (!found) return null;
  const { day = 'THIS', part = found.alone } = found;
  const today = Math.floor(issued / DAY) * DAY;
  const beforeDawn = issued - today < 6 * HOUR && after <= issued;
  if (day === 'TONIGHT' || (day === 'THIS' && part === 'NIGHT'))
    return at(beforeDawn ? today - DAY : today, 'NIGHT');
  if (day === 'OVERNIGHT') return at(beforeDawn ? today - DAY : today, 'OVERNIGHT');
  if (day === 'TODAY' || day === 'THIS') return at(today, part ?? 'DAY');
  if (day === 'TOMORROW') return at(today + DAY, part ?? 'DAY');
  const ahead = (WEEKDAYS.indexOf(day.slice(0, 3)) - new Date(after).getUTCDay() + 7) % 7;
  const next = at(Math.floor(after / DAY) * DAY + ahead * DAY, part ?? 'DAY');
  return next.to > after ? next : { from: next.from + 7 * DAY, to: next.to + 7 * DAY };
}

function at(midnight: number, part: string): Span {
  const [from, to] = PARTS[part] ?? [0, 24];
  return { from: midnight + from * HOUR, to: midnight + to * HOUR };
}
