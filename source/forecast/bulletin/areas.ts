import type { Product } from './blocks.ts';
import type { Span } from './day-part.ts';
import type { Issue } from './issue-time.ts';
import { POINT } from './patterns.ts';
import type { TimedPeriod } from './periods.ts';
import type { Section } from './section.ts';
import { purgeInstant } from './zone-line.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const MOST_HEADER = 100;

/** Names that stand one behind another without a comma: the sea areas of the British shipping forecast, as published. */
const NAMES =
  'Viking,North Utsire,South Utsire,Forties,Cromarty,Forth,Tyne,Dogger,Fisher,German Bight,Humber,Thames,Dover,Wight,Portland,Plymouth,Biscay,Trafalgar,FitzRoy,Sole,Lundy,Fastnet,Irish Sea,Shannon,Rockall,Malin,Hebrides,Bailey,Fair Isle,Faeroes,Southeast Iceland';
const KNOWN = NAMES.split(',').map((name) => name.toUpperCase());

const BEGINS = `(?:WINDS?[:.]? ?)?(?:MAINLY |LIGHT )?(?:${POINT}|VARIABLE|CYCLONIC)(?![A-Z])[^.]{0,80}?\\d`;
const begins = new RegExp(`^${BEGINS}`);
const sameLine = new RegExp(`^([A-Z][A-Z ,&'/()-]{1,${MOST_HEADER}}?)(?::|\\.{1,3}|-) ?(?=${BEGINS})`);
const header = new RegExp(`^[A-Z][A-Z ,&'/()-]{1,${MOST_HEADER}}[:.]?$`);
const OUTLOOK = /\bOUTLOOK\b[^:.]{0,80}[:.]/;
const WARNING =
  /\b(?:WARNINGS? OF (?:[A-Z]+ )?(?:GALES?|STORMS?)|GALE WARNINGS?|STORM WARNINGS?)\b[^.]{0,300}/g;

interface Area {
  readonly zones: readonly string[];
  prose: string;
}

/** The areas of a national forecast: a line of names, then wind (in Beaufort forces or knots), sea state, weather and visibility in prose. */
export function areaSections({ text, issue }: Product, ended: boolean): readonly Section[] {
  const lines = text
    .toUpperCase()
    .split('\n')
    .map((line) => line.replace(/\s+/g, ' ').trim());
  const areas: Area[] = [];
  let preamble = '';
  for (let i = 0; i < lines.length; i += 1) {
    const line = lines[i] ?? '';
    const found = areaAt(lines, i);
    if (found) {
      areas.push({ zones: namesIn(found.header), prose: '' });
      i = found.last;
      if (found.prose !== '') areas.at(-1)!.prose = found.prose;
    } else if (areas.length > 0) areas.at(-1)!.prose += `\n${line}`;
    else preamble += ` ${line}`;
  }
  const warnings = preamble.match(WARNING) ?? [];
  const hours = hoursIn(preamble);
  return areas.map(({ zones, prose }, i) => ({
    zones,
    name: '',
    issue,
    purge: null,
    headlines: warnings.filter((warning) => concerns(warning, zones, areas)),
    ended: ended || i < areas.length - 1,
    wide: false,
    hoursTaken: hours === null,
    periods: (at) => periodsOf(prose, hours, at),
  }));
}

/** Whether an area begins in this line: its names before the wind in the same line, or in this line and those below with the wind behind them. */
function areaAt(lines: readonly string[], first: number) {
  const line = lines[first] ?? '';
  const inLine = sameLine.exec(line);
  if (inLine) return { header: inLine[1] ?? '', last: first, prose: line.slice(inLine[0].length) };
  let last = first;
  while (last - first < 4 && header.test(lines[last] ?? '') && !begins.test(lines[last] ?? '')) {
    if (begins.test(lines[last + 1] ?? '') && !header.test(lines[last + 1] ?? ''))
      return { header: lines.slice(first, last + 1).join(' '), last, prose: '' };
    if (!(lines[last] ?? '').endsWith(',')) return null;
    last += 1;
  }
  return null;
}

function namesIn(text: string): readonly string[] {
  const names: string[] = [];
  let rest = text.replace(/[:.]/g, '').trim();
  while (rest !== '') {
    const known = KNOWN.find(
      (name) => rest === name || (rest.startsWith(name) && /[ ,&/]/.test(rest.charAt(name.length))),
    );
    if (known === undefined) break;
    names.push(known);
    rest = rest.slice(known.length).replace(/^[ ,&/]+(?:AND )?/, '');
  }
  const others = rest
    .split(/[,/&]|\bAND\b/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return [...names, ...others];
}

/** A warning is for the areas it names; one that names none of the text's areas is for all. */
function concerns(warning: string, zones: readonly string[], areas: readonly Area[]): boolean {
  const named = (names: readonly string[]) => names.some((name) => warning.includes(name));
  return named(zones) || !areas.some((area) => named(area.zones));
}

type Hours = { readonly next: number } | { readonly from: string; readonly to: string };

/** How long a forecast holds, as its beginning says: hours from the issue, or two times of day (HHMM, or DDHHMM). Null where it does not say. */
function hoursIn(preamble: string): Hours | null {
  const times = /\b(\d{6}|\d{4}) ?(?:UTC|GMT|Z)? ?(?:TO|UNTIL|-) ?(\d{6}|\d{4}) ?(?:UTC|GMT|Z)\b/.exec(
    preamble,
  );
  if (times) return { from: times[1] ?? '', to: times[2] ?? '' };
  const next = /\bNEXT (\d{1,2}) ?(?:HOURS|HRS)\b|\b(\d{1,2})[ -]?(?:HOURS?|HRS?) FORECAST\b/.exec(preamble);
  return next ? { next: Number(next[1] ?? next[2]) } : null;
}

function periodsOf(prose: string, hours: Hours | null, issue: Issue): readonly TimedPeriod[] {
  const span = spanOfHours(hours, issue);
  const outlook = OUTLOOK.exec(prose);
  if (!outlook) return [{ label: 'FORECAST', prose, span }];
  return [
    { label: 'FORECAST', prose: prose.slice(0, outlook.index), span },
    {
      label: 'OUTLOOK',
      prose: prose.slice(outlook.index + outlook[0].length),
      span: { from: span.to, to: span.to + DAY },
    },
  ];
}

function spanOfHours(hours: Hours | null, { at }: Issue): Span {
  const next = { from: at, to: at + DAY };
  if (hours === null) return next;
  if ('next' in hours) return { from: at, to: at + Math.max(1, hours.next) * HOUR };
  const from = instantOfTime(hours.from, at - 12 * HOUR);
  const to = from === null ? null : instantOfTime(hours.to, from + HOUR);
  if (from === null || to === null || to - from > 5 * DAY) return next;
  return { from: from - at <= 6 * HOUR ? Math.min(from, at) : from, to };
}

/** The first instant from `after` on with that time of day, or that day of the month and time. */
function instantOfTime(digits: string, after: number): number | null {
  if (digits.length === 6) return purgeInstant(digits, after);
  const at =
    Math.floor(after / DAY) * DAY + Number(digits.slice(0, 2)) * HOUR + Number(digits.slice(2)) * 60_000;
  return at >= after ? at : at + DAY;
}
