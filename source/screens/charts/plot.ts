import { pad, widthOf } from '../width.ts';
import { canvasOf, DOTS_DOWN } from './canvas.ts';

/** Dots from one of a band to the next. */
const BAND_DOTS = 3;

/** A line chart's parts. `at` is ms since 1970 UTC; values are in whatever unit `label` writes. */
export interface Plot {
  readonly points: readonly Point[];
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
  /** Lines across, such as the low mark: dotted, each with its word at the right. */
  readonly levels: readonly { readonly value: number; readonly word: string }[];
  readonly ticks: readonly { readonly at: number; readonly word: string }[];
  /** Values written at the left. */
  readonly marks: readonly number[];
  readonly label: (value: number) => string;
  /** Points joined by straight lines, or kept level until the next one, as a count is. */
  readonly joined: 'straight' | 'stepped';
  /** Between which the points may lie: drawn as dots above and below them. NaN, here as in `points`, is what is not known. */
  readonly band?: readonly { readonly at: number; readonly low: number; readonly high: number }[];
  /** Letters over the picture, such as what was read; one that lies outside is left out. */
  readonly letters?: readonly (Point & { readonly letter: string })[];
  /** A moment pointed at from below. */
  readonly pointed?: number;
  /** Letters under the picture, on the line of what is pointed at: what was done when. */
  readonly below?: readonly { readonly at: number; readonly letter: string }[];
  /** Times drawn darker, such as nights. */
  readonly shaded?: readonly Span[];
  /** Times marked under the picture on a line of their own, each with its word. */
  readonly spans?: readonly (Span & { readonly word: string })[];
  /** What stands at the right end of the line of time. */
  readonly corner?: string;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface Point {
  readonly at: number;
  readonly value: number;
}

/** The chart as lines of exactly `columns`: `rows` of picture, one of spans where there are any, and one of time below. */
export function plotLines(plot: Plot, columns: number, rows: number): string[] {
  const left = Math.max(...plot.marks.map((mark) => widthOf(plot.label(mark)))) + 1;
  const right =
    Math.max(-1, ...plot.levels.map(({ word }) => widthOf(word)), widthOf(plot.corner ?? '') - 1) + 1;
  const wide = Math.max(4, columns - left - right);
  const marks = new Map(plot.marks.map((mark) => [rowOf(plot, mark, rows), plot.label(mark)]));
  const words = new Map(plot.levels.map(({ value, word }) => [rowOf(plot, value, rows), word]));
  const lines = drawn(plot, wide, rows).map((cells, row) => {
    const word = words.get(row);
    return pad(
      `${pad(marks.get(row) ?? '', left - 1, 'right')} ${cells}${word === undefined ? '' : ` ${word}`}`,
      columns,
    );
  });
  const below = (text: string) => pad(' '.repeat(left) + text, columns);
  const spans = plot.spans ?? [];
  const marked = spans.length > 0 || plot.pointed !== undefined || plot.below !== undefined;
  return [
    ...lines,
    ...(marked ? [below(pointedAt(plot, spanLine(plot, spans, wide), wide))] : []),
    below(plot.corner ? `${pad(tickLine(plot, wide), wide)} ${plot.corner}` : tickLine(plot, wide)),
  ];
}

/** The columns a time takes, first and last; null where it lies outside. */
function columnsOf({ from, to }: Plot, span: Span, columns: number): [number, number] | null {
  if (span.to < from || span.from > to) return null;
  const column = (at: number) => Math.round(((at - from) / (to - from || 1)) * (columns - 1));
  return [column(Math.max(from, span.from)), column(Math.min(to, span.to))];
}

/** `|── window ──|`, the word where there is room for it. */
function spanLine(plot: Plot, spans: NonNullable<Plot['spans']>, columns: number): string {
  let text = '';
  for (const span of spans) {
    const place = columnsOf(plot, span, columns);
    if (!place || place[0] < text.length) continue;
    const inside = Math.max(0, place[1] - place[0] - 1);
    const word = inside >= span.word.length + 2 ? ` ${span.word} ` : '';
    const line = word.padStart(Math.ceil((inside + word.length) / 2), '─').padEnd(inside, '─');
    text = `${text.padEnd(place[0])}|${line}|`;
  }
  return text;
}

/** The row of the picture a value lies in, 0 at the top. */
function rowOf({ least, most }: Plot, value: number, rows: number): number {
  const dots = rows * DOTS_DOWN - 1;
  const dot = Math.round(((value - least) / (most - least || 1)) * dots);
  return rows - 1 - Math.floor(dot / DOTS_DOWN);
}

function drawn(plot: Plot, columns: number, rows: number): string[] {
  const canvas = canvasOf(columns, rows);
  const x = (at: number) => ((at - plot.from) / (plot.to - plot.from || 1)) * (canvas.width - 1);
  const y = (value: number) => ((value - plot.least) / (plot.most - plot.least || 1)) * (canvas.height - 1);
  for (const { value } of plot.levels) {
    for (let across = 0; across < canvas.width; across += 4) canvas.dot(across, y(value));
  }
  plot.points.forEach((point, index) => {
    const here = { x: x(point.at), y: y(point.value) };
    const before = plot.points[index - 1];
    canvas.dot(here.x, here.y);
    if (!before) return;
    const there = { x: x(before.at), y: y(before.value) };
    const corner = { x: here.x, y: there.y };
    if (plot.joined === 'straight') canvas.stroke(there, here);
    else {
      canvas.stroke(there, corner);
      canvas.stroke(corner, here);
    }
  });
  const band = plot.band ?? [];
  for (let across = 0; across < canvas.width; across += BAND_DOTS) {
    const after = band.findIndex(({ at }) => x(at) >= across);
    const [before, next] = [band[after - 1], band[after]];
    if (!next || (!before && x(next.at) - across >= 1)) continue;
    const part = before ? (across - x(before.at)) / (x(next.at) - x(before.at)) : 1;
    const between = (a: number | undefined, b: number) => (a === undefined ? b : a + part * (b - a));
    canvas.dot(across, y(between(before?.low, next.low)));
    canvas.dot(across, y(between(before?.high, next.high)));
  }
  return lettered(plot, shade(plot, canvas.lines(), columns), columns);
}

function lettered(plot: Plot, lines: string[], columns: number): string[] {
  const cells = lines.map((line) => Array.from(line));
  for (const { at, value, letter } of plot.letters ?? []) {
    const [column] = columnsOf(plot, { from: at, to: at }, columns) ?? [];
    const row = cells[rowOf(plot, value, lines.length)];
    if (column !== undefined && row) row[column] = letter;
  }
  return cells.map((row) => row.join(''));
}

/** Every other empty cell of the times that are shaded gets a point. */
function shade(plot: Plot, lines: string[], columns: number): string[] {
  const dark = new Set<number>();
  for (const span of plot.shaded ?? []) {
    const [first, last] = columnsOf(plot, span, columns) ?? [0, -1];
    for (let column = first; column <= last; column += 1) dark.add(column);
  }
  if (dark.size === 0) return lines;
  return lines.map((cells, row) =>
    Array.from(cells, (cell, column) =>
      cell === ' ' && dark.has(column) && (row + column) % 2 === 0 ? '·' : cell,
    ).join(''),
  );
}

function pointedAt(plot: Plot, text: string, columns: number): string {
  const letters = [
    ...(plot.below ?? []),
    ...(plot.pointed === undefined ? [] : [{ at: plot.pointed, letter: '↑' }]),
  ];
  const cells = Array.from(text);
  for (const { at, letter } of letters) {
    const [column] = columnsOf(plot, { from: at, to: at }, columns) ?? [];
    if (column === undefined) continue;
    while (cells.length <= column) cells.push(' ');
    cells[column] = letter;
  }
  return cells.join('');
}

/** `|Tue      |Wed`: each word where its moment is, left out where it would run into the one before. */
function tickLine(plot: Plot, columns: number): string {
  let text = '';
  for (const { at, word } of plot.ticks) {
    const column = Math.round(((at - plot.from) / (plot.to - plot.from || 1)) * (columns - 1));
    const fits = column >= 0 && column + 1 + word.length <= columns;
    if (!fits || (text !== '' && column < text.length + 1)) continue;
    text = `${text.padEnd(column)}|${word}`;
  }
  return text;
}
