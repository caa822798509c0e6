import type { Product } from './blocks.ts';
import type { Issue } from './issue-time.ts';
import type { TimedPeriod } from './periods.ts';
import type { Section } from './section.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** High seas forecasts go 48 hours ahead (NWS, High Seas Forecast); some give systems for 72 as well. */
const USUAL_HOURS = 48;
const MOST_HOURS = 120;
const STEP_HOURS = 24;

const MONTHS = 'JAN FEB MAR APR MAY JUN JUL AUG SEP OCT NOV DEC'.split(' ');
const VALID = /^SYNOPSIS VALID (\d\d)(\d\d) UTC(?: [A-Z]{3})? ([A-Z]{3}) (\d{1,2})\b/;
const AHEAD = /\b(\d{2,3}) (?:HOUR|HR) FORECAST\b/;
const NO_ITEM = /^(?:WARNINGS?|SYNOPSIS|FORECASTER|SYNOPSIS AND FORECAST)\b.{0,40}$/;

/** Whether a bulletin is a high seas forecast. */
export function isHighSeas({ text }: Product): boolean {
  return /\bHIGH SEAS FORECAST\b/.test(text.slice(0, 1000).toUpperCase());
}

/**
 * The parts of a high seas forecast, one for each ocean area it treats. Within one, systems stand side by side with the areas they cover in degrees; the worst of
 * them all, at the beginning, the end and between, is what each 24 hours come to.
 */
export function highSeasSections(product: Product): readonly Section[] {
  const lines = product.text.split('\n').map((line) => line.trim());
  const starts = lines.flatMap((line, i) => (VALID.test(line.toUpperCase()) ? [i] : []));
  const ended = lines.some((line) => line.startsWith('$$'));
  return starts.map((start, i) => {
    const next = starts[i + 1];
    const end = next === undefined ? lines.length : nameStart(lines, next);
    const own = lines.slice(start, end).map((line) => line.toUpperCase());
    return {
      zones: [lines.slice(nameStart(lines, start), start).join(' ').trim().slice(0, 200)],
      name: '',
      issue: product.issue,
      purge: null,
      headlines: own.flatMap((line) => /^\.{3}(.+?)\.{3}$/.exec(line)?.[1] ?? []),
      ended: next !== undefined || ended,
      wide: true,
      hoursTaken: false,
      periods: (issue) => periodsOf(own, issue),
    };
  });
}

/** Where the paragraph before the line begins that names the waters. */
function nameStart(lines: readonly string[], valid: number): number {
  let from = valid;
  while (from > 0 && lines[from - 1] === '') from -= 1;
  while (from > 0 && lines[from - 1] !== '' && valid - from < 6) from -= 1;
  return from;
}

function periodsOf(lines: readonly string[], issue: Issue): readonly TimedPeriod[] {
  const base = baseOf(lines[0] ?? '', issue);
  if (base === null) return [];
  const items = itemsOf(lines);
  const said = lines.flatMap((line) => /^(\d{2,3}) HOUR FORECAST VALID/.exec(line)?.[1] ?? []).map(Number);
  const hours = Math.min(Math.max(...said, said.length > 0 ? 0 : USUAL_HOURS), MOST_HOURS);
  return Array.from({ length: Math.ceil(hours / STEP_HOURS) }, (_, i) => {
    const [from, to] = [i * STEP_HOURS, (i + 1) * STEP_HOURS];
    const within = items.filter(({ ahead }) => ahead >= from && ahead <= to);
    return {
      label: `${from} TO ${to} HOURS`,
      prose: within.map(({ prose }) => prose).join('. '),
      span: { from: base + from * HOUR, to: base + to * HOUR },
    };
  });
}

/** The paragraphs that begin with a point, and how many hours ahead each is for. */
function itemsOf(lines: readonly string[]): readonly { readonly ahead: number; readonly prose: string }[] {
  const paragraphs: string[] = [];
  let open = false;
  for (const line of lines) {
    if (line.startsWith('$$') || line === '' || line.startsWith('...')) open = false;
    else if (line.startsWith('.')) {
      open = !NO_ITEM.test(line.slice(1));
      if (open) paragraphs.push(line.slice(1));
    } else if (open) paragraphs.push(`${paragraphs.pop() ?? ''} ${line}`);
  }
  return paragraphs.map((text) => ({
    ahead: Number(AHEAD.exec(text.slice(0, 80))?.[1] ?? 0),
    prose: text.replace(AHEAD, ' '),
  }));
}

/** The synopsis has hour, day and month; its year is the one that brings it nearest to the issue. */
function baseOf(line: string, issue: Issue): number | null {
  const [, hour = '', minute = '', month = '', day = ''] = VALID.exec(line) ?? [];
  const number = MONTHS.indexOf(month);
  if (number < 0) return null;
  const year = new Date(issue.at).getUTCFullYear();
  const years = [year - 1, year, year + 1].map((one) =>
    Date.UTC(one, number, Number(day), Number(hour), Number(minute)),
  );
  const near = years.filter((at) => Math.abs(at - issue.at) < 3 * DAY);
  return near[0] ?? null;
}
