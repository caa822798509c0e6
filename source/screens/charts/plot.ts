import { pad, widthOf } from '../width.ts';
import { canvasOf, DOTS_DOWN } from './canvas.ts';

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
}

export interface Point {
  readonly at: number;
  readonly value: number;
}

/** The chart as lines of exactly `columns`: `rows` of picture and one of time below. */
export function plotLines(plot: Plot, columns: number, rows: number): string[] {
  const left = Math.max(...plot.marks.map((mark) => widthOf(plot.label(mark)))) + 1;
  const right = Math.max(-1, ...plot.levels.map(({ word }) => widthOf(word))) + 1;
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
  return [...lines, pad(' '.repeat(left) + tickLine(plot, wide), columns)];
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
  return canvas.lines();
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
