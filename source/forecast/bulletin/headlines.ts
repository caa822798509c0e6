import type { Headline } from '../forecast.ts';
import { type Clock, spanOf } from './day-part.ts';
import type { Issue } from './issue-time.ts';

const DAY = 86_400_000;
const HOUR = 3_600_000;

const ABOUT: readonly (readonly [RegExp, Headline['about']])[] = [
  [/\bSMALL CRAFT\b/, 'small craft'],
  [/\bHURRICANE FORCE\b/, 'hurricane force'],
  [/\bHURRICANE\b|\bTYPHOON\b/, 'hurricane'],
  [/\bTROPICAL STORM\b/, 'tropical storm'],
  [/\bSQUALLS?\b|\bSPECIAL MARINE\b|\bTHUNDERSTORMS?\b/, 'squalls'],
  [/\bSTORM (?:FORCE )?(?:WIND )?(?:WARNING|WATCH)|\bSTORM WARNING|\bWARNINGS? OF STORMS?\b/, 'storm'],
  [/(?<!\bNEAR )\bGALES?\b/, 'gale'],
  [/\bSTRONG WIND\b|\bBRISK WIND\b|\bNEAR GALE\b/, 'strong wind'],
];
const OVER = /\bNO LONGER IN EFFECT\b|\bCANCEL(?:L?ED)\b|\bEXPIRED\b|\bNO (?:GALE )?WARNINGS?\b/;

/** Each is a warning of its own. */
const LEVEL = /\b(?:WARNINGS?|WATCH|ADVISORY|EXERCISE CAUTION)\b/i;
/** What was in force before does not count. */
const REPLACED = /^.*\b(?:REPLACED (?:WITH|BY)|(?:UP|DOWN)GRADED TO)\b|\bREPLAC(?:ES|ING)\b.*$/g;

export interface HeadlineRead {
  readonly headline: Headline;
  readonly timesRead: boolean;
}

/** The headlines in a line of them as a forecast keeps them, one for each thing warned of: what it is about, how strong, and from when to when. One that is cancelled is over. */
export function headlinesFrom(text: string, issue: Issue): readonly HeadlineRead[] {
  const statements: string[] = [];
  for (const part of text.split(/(?<=[.,;])\s+|\s+(?=and\s)/i)) {
    const last = statements.at(-1);
    if (last !== undefined && !(LEVEL.test(last) && LEVEL.test(part)))
      statements[statements.length - 1] = `${last} ${part}`;
    else statements.push(part);
  }
  return statements.map((statement) => headlineFrom(statement.replace(/^and\s+|[,;]$/gi, ''), issue));
}

function headlineFrom(text: string, issue: Issue): HeadlineRead {
  const words = text.toUpperCase().replace(/\s+/g, ' ').replace(REPLACED, '').trim();
  const issuedAt = new Date(issue.at).toISOString();
  const about = ABOUT.find(([pattern]) => pattern.test(words))?.[1] ?? null;
  const kept = { text: text.slice(0, 2000), about, level: levelOf(words) };
  if (OVER.test(words))
    return { headline: { ...kept, level: 'other', from: issuedAt, to: issuedAt }, timesRead: true };
  const { from, to, read } = timesOf(words, issue);
  return { headline: { ...kept, from: iso(from), to: iso(to) }, timesRead: read };
}

/** Where a watch became a warning, it is one. */
function levelOf(words: string): Headline['level'] {
  if (/\bWARNINGS?\b/.test(words)) return 'warning';
  if (/\bWATCH\b/.test(words)) return 'watch';
  return /\bADVISORY\b|\bEXERCISE CAUTION\b/.test(words) ? 'advisory' : 'other';
}

/** From when to when a headline says it holds; an end it does not say, or that is not understood, is null. */
function timesOf(words: string, issue: Issue) {
  const said = / (?:FROM|THROUGH|THRU|UNTIL|TILL) .*$/.exec(words)?.[0];
  if (said === undefined) return { from: null, to: null, read: true };
  const ahead = issue.aheadMinutes * 60_000;
  const clock = { issued: issue.at + ahead, after: issue.at + ahead };
  const begins = / FROM (.+?)(?= (?:TO|THROUGH|THRU|UNTIL|TILL) |$)/.exec(said)?.[1];
  const ends = / (?:TO|THROUGH|THRU|UNTIL|TILL) (.+?)$/.exec(said.replace(/^ FROM /, ' '))?.[1];
  const from = begins === undefined ? null : momentOf(begins, clock, 'from');
  const to = ends === undefined ? null : momentOf(ends, { ...clock, after: from ?? clock.after }, 'to');
  const read = (begins === undefined || from !== null) && (ends === undefined || to !== null);
  return read && (from === null || to === null || from < to)
    ? { from: from && from - ahead, to: to && to - ahead, read }
    : { from: null, to: null, read: false };
}

/** `7 PM THIS EVENING`, `NOON SATURDAY`, `LATE TONIGHT`, `SUNDAY AFTERNOON`: local ms. Of a part of a day its beginning, or its end. */
function momentOf(words: string, clock: Clock, end: 'from' | 'to'): number | null {
  const found = /^(?:(\d{1,2})(?::?(\d\d))? ?([AP])M|(NOON|MIDNIGHT))(?: [A-Z]{1,3}[DS]?T)?(?: (.+))?$/.exec(
    words,
  );
  if (!found) return spanOf(words, clock)?.[end] ?? null;
  const [, h = '12', min = '0', half, name, day] = found;
  const hour = half === undefined ? (name === 'NOON' ? 12 : 24) : (Number(h) % 12) + (half === 'P' ? 12 : 0);
  const time = hour * HOUR + Number(min) * 60_000;
  if (day === undefined) {
    const today = Math.floor(clock.after / DAY) * DAY + (time % DAY);
    return today > clock.after ? today : today + DAY;
  }
  const span = spanOf(day, clock);
  if (!span) return null;
  const midnight = Math.floor(span.from / DAY) * DAY;
  // The small hours of a night belong to the next day: 3 AM LATE TONIGHT.
  return midnight + time + (time < 12 * HOUR && span.to - midnight > DAY && hour < 12 ? DAY : 0);
}

function iso(at: number | null): string | null {
  return at === null ? null : new Date(at).toISOString();
}
