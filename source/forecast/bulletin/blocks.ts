import { spanOf } from './day-part.ts';
import { type Issue, issueIn } from './issue-time.ts';
import type { Period } from './periods.ts';
import { beginsZoneLine, type ZoneLine, zoneLine } from './zone-line.ts';

/** One block of a bulletin: the text for one zone or several. */
export interface Block {
  /** Empty where the text has no zone line. */
  readonly zones: readonly string[];
  readonly purge: string | null;
  /** The waters in words. */
  readonly name: string;
  readonly issue: Issue | null;
  readonly headlines: readonly string[];
  readonly periods: readonly Period[];
  /** It has its end mark, or another block stands behind it. */
  readonly ended: boolean;
}

/** One bulletin of a mail that may hold several. */
export interface Product {
  /** `FZUS56 KMTR`, or empty. */
  readonly heading: string;
  readonly text: string;
  readonly issue: Issue | null;
}

const HEADING = /^([A-Z]{4}\d{2} [A-Z]{4}) \d{6}(?: [A-Z]{3})?\s*$/gm;
const LABELLED = /^(\.)?\s?([A-Za-z][A-Za-z0-9 /'-]{1,70}?)\s?(?:\.{2,}|\u2026|:)\s?(.*)$/;
/** A label in the middle of a line: the line feeds were lost on the way. */
const JOINED = / \.(?=[A-Z][A-Z ]{1,40}\.{3})/g;
/** Labels of what is no forecast period. */
const NO_PERIOD = /^(?:SYNOPSIS|DISCUSSION|FORECASTER|NOTE|REMARKS|WARNINGS?|MARINE WEATHER)/;
/** A headline is wrapped over no more lines than this. */
const MOST_LINES = 8;

/** The bulletins in a text, split at their WMO headings. Text before the first belongs to the first. */
export function productsIn(text: string): readonly Product[] {
  const starts = [...text.matchAll(HEADING)];
  if (starts.length === 0) return [{ heading: '', text, issue: issueIn(text) }];
  return starts.map((start, i) => {
    const part = text.slice(i === 0 ? 0 : start.index, starts[i + 1]?.index);
    return { heading: start[1] ?? '', text: part, issue: issueIn(part) };
  });
}

/** The blocks of a bulletin: from each zone line to the next or to `$$`. A text with periods and no zone line is one block. */
export function blocksIn({ text, issue }: Product): readonly Block[] {
  const lines = text
    .replace(JOINED, '\n.')
    .split('\n')
    .map((line) => line.trim());
  const parts: { zone: ZoneLine | null; lines: string[]; ended: boolean }[] = [];
  let open: (typeof parts)[number] | null = { zone: null, lines: [], ended: false };
  parts.push(open);
  for (let i = 0; i < lines.length; i += 1) {
    const line = lines[i] ?? '';
    const zone = zoneLine(beginsZoneLine(line) ? `${line}${lines[i + 1] ?? ''}` : line);
    if (zone) {
      if (open) open.ended = true;
      if (beginsZoneLine(line)) i += 1;
      open = { zone, lines: [], ended: false };
      parts.push(open);
    } else if (line.startsWith('$$')) {
      if (open) open.ended = true;
      open = null;
    } else open?.lines.push(line);
  }
  return parts
    .map((part) => blockOf(part.zone, part.lines, part.ended, issue))
    .filter(({ periods }) => periods.length > 0);
}

function blockOf(
  zone: ZoneLine | null,
  lines: readonly string[],
  ended: boolean,
  issue: Issue | null,
): Block {
  const headlines: string[] = [];
  const periods: { label: string; prose: string }[] = [];
  let skipping = false;
  // Where labels have their points, a line that only looks like one goes on with the sentence above.
  const isPointed = lines.some((line) => /^\.[A-Za-z]/.test(line));
  for (let i = 0; i < lines.length && lines[i] !== '&&'; i += 1) {
    const line = lines[i] ?? '';
    const label = labelled(line, isPointed);
    const headline = label ? null : headlineAt(lines, i, periods.length > 0);
    if (label) {
      skipping = NO_PERIOD.test(label.label);
      if (!skipping) periods.push(label);
    } else if (headline) {
      headlines.push(headline.text);
      i = headline.last;
    } else if (periods.length > 0 && !skipping) periods.at(-1)!.prose += `\n${line}`;
  }
  const own = zone && issueIn(lines.join('\n'));
  const { zones = [], purge = null } = zone ?? {};
  return { zones, purge, name: zone ? nameIn(lines) : '', issue: own ?? issue, headlines, periods, ended };
}

/** The lines between the zone line and the issue time. */
function nameIn(lines: readonly string[]): string {
  const after = lines.findIndex(
    (line) => line === '' || isHeadline(line) || labelled(line, false) || issueIn(line),
  );
  return lines
    .slice(0, Math.min(Math.max(after, 0), MOST_LINES))
    .join(' ')
    .replace(/-(?= |$)/g, ';')
    .replace(/;$/, '')
    .slice(0, 300);
}

function isHeadline(line: string): boolean {
  return line.startsWith('...') || line.startsWith('\u2026');
}

/** `.TONIGHT...NW wind 20 kt.` A label without its leading point must name a time, and stands only where none has it. */
function labelled(line: string, isPointed: boolean): Period | null {
  const found = LABELLED.exec(line);
  if (!found) return null;
  const [, point, label = '', prose = ''] = found;
  if (point === undefined && isPointed) return null;
  const name = label.toUpperCase().replace(/\s+/g, ' ');
  const isTime = spanOf(name, { issued: 0, after: 0 }) !== null;
  return isTime || point !== undefined ? { label: name, prose } : null;
}

/** The headline that begins in a line, over as many lines as it takes to its closing dots. One that has none is a headline only above the periods. */
function headlineAt(
  lines: readonly string[],
  first: number,
  isBelow: boolean,
): { readonly text: string; readonly last: number } | null {
  if (!isHeadline(lines[first] ?? '')) return null;
  const isClosed = (at: number) => /[^.\u2026](?:\.{3}|\u2026)$/.test(lines[at] ?? '');
  const goesOn = (at: number) =>
    at - first < MOST_LINES && (lines[at] ?? '') !== '' && !/^\.[A-Za-z]/.test(lines[at] ?? '');
  let last = first;
  while (!isClosed(last) && goesOn(last + 1)) last += 1;
  if (isBelow && !isClosed(last)) return null;
  const text = lines.slice(first, last + 1).join(' ');
  return { text: text.replace(/^[.\u2026]+|[.\u2026]+$/g, '').trim(), last };
}
