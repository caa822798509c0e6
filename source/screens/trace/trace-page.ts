import { STATE_WORDS } from '../../words/reasons.ts';
import { capital } from '../../words/say.ts';
import type { TraceDocument } from '../../words/trace-document.ts';
import { CHANCES_ONLY, type TraceParts, traceParts } from '../../words/trace-parts.ts';
import { tablesOf } from '../../words/traced.ts';
import { apart, BLANK, type Line, line, paragraph, say, type Tone } from '../lines.ts';
import { LOOKING_ONLY } from '../looking-only.ts';
import { MARKS } from '../panel.ts';
import { nameOf, type Sight } from '../sight.ts';
import { type TracePage, toldOf } from './trace.ts';

export function traceTitle(sight: Sight, { id, table }: TracePage, columns: number): Line {
  const state = sight.items.find((one) => one.id === id)?.state ?? null;
  const title = tablesOf(sight.boat.loaded, id).find((one) => one.id === table)?.title ?? '';
  return apart(
    [say(`  ${nameOf(sight, id).toLocaleUpperCase()}`, 'title'), say(`  ${title}`)],
    state === null ? [] : [say(`${MARKS[state]} ${STATE_WORDS[state]}  `, state)],
    columns,
  );
}

/** What can be lived with first, then how far the hunt is, the next best look or, where none is left, the order of repairs; then the causes with their clues. */
export function traceLines(sight: Sight, page: TracePage, columns: number): Line[] {
  const told = (text: string, indent = 2, tone: Tone = 'plain') =>
    paragraph(text, columns - 2, { indent, tone });
  const traced = toldOf(sight.model, page.id);
  const document = traced?.trace?.table.id === page.table ? traced.trace : null;
  if (!document) {
    const fits = tablesOf(sight.boat.loaded, page.id).some(({ id }) => id === page.table);
    return told(
      fits ? 'The log is being read.' : 'The boat file no longer has this item, or nothing to trace it by.',
    );
  }
  const titled = (title: string, lines: readonly Line[]) =>
    lines.length === 0 ? [] : [BLANK, line(say(`  ${title}`, 'title')), ...lines];
  const listed = (lines: readonly string[]) => lines.flatMap((text) => told(text, 4));
  const barred = (document.liveWith?.bars.length ?? 0) > 0;
  const parts = traceParts(document);
  const repairs = parts.repairs ? titled(parts.repairs.title, listed([...parts.repairs.lines, WORK])) : [];
  return [
    ...(sight.boat.loaded.readOnly ? told(LOOKING_ONLY, 2, 'watch') : []),
    ...parts.live.flatMap((text) => told(text, 2, barred ? 'danger' : 'plain')),
    ...told(parts.state, 2, 'title'),
    ...(parts.look ? [BLANK, ...lookLines(sight, page, parts.look, columns)] : [...told(SPENT), ...repairs]),
    ...titled('CAUSES', [
      ...parts.causes.flatMap(({ chance, name, clues }) => [
        ...told(`${name}, ${chance}`, 4),
        ...clues.flatMap((clue) => told(clue, 8)),
      ]),
      ...listed(parts.together),
    ]),
    ...(parts.look ? repairs : []),
    ...titled('WORK DONE FOR IT', listed(parts.jobs.open.map((text) => `${text}, or h says so.`))),
    ...titled('FOUND BEFORE', listed(parts.jobs.closed.length === 0 ? [] : [...parts.jobs.closed, WHOLE])),
    ...titled('LOOKED FOR', listed(answeredWords(document))),
    ...titled(
      'CAUTIONS',
      document.warnings.flatMap((text) => told(text)),
    ),
    BLANK,
    ...[...parts.unknown, ...document.trouble, CHANCES_ONLY].flatMap((text) => told(text)),
  ];
}

const WHOLE = 'F turns to the newest of them.';
const SPENT = 'Nothing more to look for now.';
const WORK = 'Once done, o logs it for its cause; the readings after it tell whether it was that.';

/** The first line shown, so that all of the look asked for is in sight; where there is no room for it, its beginning; where none is asked, the top. */
export function lookFrom(lines: readonly Line[], rows: number): number {
  const asked = askedLines(lines);
  if (!asked) return 0;
  const { first, last } = asked;
  if (last <= rows - 2) return 0;
  return fits(asked, rows) ? last - (rows - 2) : first - 1;
}

/** Whether the look asked for can be read on the screen: all of it, or as much as there is room for. */
export function lookInSight(lines: readonly Line[], from: number, rows: number): boolean {
  const asked = askedLines(lines);
  if (!asked) return false;
  const { first, last } = asked;
  const top = from > 0 ? from + 1 : 0;
  if (top <= first && last <= from + rows - 2) return true;
  return !fits(asked, rows) && first <= top && top <= last;
}

/** The first row and the last may say how many lines are out of sight. */
function fits({ first, last }: { first: number; last: number }, rows: number): boolean {
  return last - first < rows - 2;
}

/** The lines of the look carry a stop. */
function askedLines(lines: readonly Line[]): { first: number; last: number } | null {
  const first = lines.findIndex(({ stop }) => stop);
  return first < 0 ? null : { first, last: lines.findLastIndex(({ stop }) => stop) };
}

function lookLines(
  sight: Sight,
  page: TracePage,
  look: NonNullable<TraceParts['look']>,
  columns: number,
): Line[] {
  const told = (text: string, tone: Tone = 'plain') => paragraph(text, columns - 2, { indent: 4, tone });
  if (page.asked) return [line(say('  saving'))];
  const stop = { key: 'look', part: 'trace', opens: { open: 'answer' } } as const;
  const keys = sight.boat.loaded.readOnly ? [] : told('y seen, n not seen, c cannot tell', 'chosen');
  return [
    line(say(`  ${look.title}`, 'title')),
    ...told(look.ask, 'title'),
    ...look.cautions.flatMap((caution) => told(caution, 'watch')),
    ...told(look.outcome),
    ...keys,
  ].map((one) => ({ ...one, stop }));
}

/** What a person answered in this hunt, the newest last. */
function answeredWords({ clues }: TraceDocument): string[] {
  return clues
    .filter(({ from }) => from === 'asked')
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
    .map(({ says }) => `${capital(says)}`);
}
