import type { State } from '../readiness/answer.ts';
import { clean } from '../words/clean.ts';
import { isPlain } from '../words/plain.ts';
import { cut, widthOf, wrapWords } from './width.ts';

/** What a piece of text is, not how it looks: the palette says that. */
export type Tone = 'plain' | 'title' | 'chosen' | 'verdict' | 'danger' | 'chart' | State;

export interface Span {
  readonly text: string;
  readonly tone: Tone;
}

/** One line of a page. `stop` names the place the choice can rest on; a line without one belongs to the stop above it. */
export interface Line {
  readonly spans: readonly Span[];
  readonly stop?: Stop;
  /** What a screen reader says in its place; nothing where empty. */
  readonly heard?: string;
}

/** A place on the board the choice can rest on: `part` is the panel it lies in, `opens` what Enter does there. */
export interface Stop {
  readonly key: string;
  readonly part: string;
  readonly opens: Opens;
}

type Opens =
  | { readonly open: 'item'; readonly id: string }
  | { readonly open: 'engine'; readonly id: string }
  | { readonly open: 'answer' }
  | { readonly open: 'trouble' }
  | { readonly open: 'fold'; readonly fold: string };

export const BLANK: Line = { spans: [] };

/** A piece of text to draw. Every text on a page is made here, so here what came from files is made safe to draw. */
export function say(text: string, tone: Tone = 'plain'): Span {
  return { text: oneLine(text), tone };
}

export function line(...spans: readonly Span[]): Line {
  return { spans };
}

export function lineWidth({ spans }: Line): number {
  return spans.reduce((sum, { text }) => sum + widthOf(text), 0);
}

/** A text as lines of at most `columns`, all in one tone, each after `indent` spaces. */
export function paragraph(
  text: string,
  columns: number,
  { indent = 0, tone = 'plain' as Tone } = {},
): Line[] {
  const room = ' '.repeat(indent);
  return wrapWords(oneLine(text), Math.max(1, columns - indent)).map((part) => line(say(room + part, tone)));
}

/** The line filled with spaces to exactly `columns`, or cut to it. */
export function exactly(of: Line, columns: number): Line {
  const width = lineWidth(of);
  if (width === columns) return of;
  if (width < columns) return { ...of, spans: [...of.spans, say(' '.repeat(columns - width))] };
  const spans: Span[] = [];
  let room = columns;
  for (const span of of.spans) {
    const text = widthOf(span.text) > room ? cut(span.text, room) : span.text;
    spans.push({ ...span, text });
    room -= widthOf(text);
    if (room <= 0) break;
  }
  return exactly({ ...of, spans }, columns);
}

/** `left` and `right` on one line, with `right` ending at `columns`; `right` goes when there is no room for both. */
export function apart(left: readonly Span[], right: readonly Span[], columns: number): Line {
  const room = columns - lineWidth(line(...left)) - lineWidth(line(...right));
  return room < 2 ? line(...left) : line(...left, say(' '.repeat(room)), ...right);
}

/** Blocks of lines next to one another, each `widths[i]` wide, `gap` columns between. Stops are dropped: they are read before. */
export function beside(blocks: readonly (readonly Line[])[], widths: readonly number[], gap: number): Line[] {
  const rows = Math.max(0, ...blocks.map((block) => block.length));
  return Array.from({ length: rows }, (_, row) => {
    const spans = blocks.flatMap((block, at) => {
      const cell = exactly(block[row] ?? BLANK, widths[at]!).spans;
      return at === 0 ? cell : [say(' '.repeat(gap)), ...cell];
    });
    return { spans };
  });
}

function oneLine(text: string): string {
  return isPlain(text) ? text : clean(text).replace(/[\n\t]+/gu, ' ');
}

/** The text of a line, for tests and for measuring. */
export function textOf({ spans }: Line): string {
  return spans.map(({ text }) => text).join('');
}
