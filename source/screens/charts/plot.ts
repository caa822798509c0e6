import { pad, widthOf } from '../width.ts';
import { canvasOf } from './canvas.ts';

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
  readonly label: (value: number) => string;
  /** Points joined by straight lines, kept level until the next one (a count), or left apart. */
  readonly joined: 'straight' | 'stepped' | 'apart';
}

export interface Point {
  readonly at: number;
  readonly value: number;
}

/** The chart as lines of exactly `columns`: `rows` of picture and one of time below. */
export function plotLines(plot: Plot, columns: number, rows: number): string[] {
  const words = plot.levels.map(({ word }) => word);
  const marked = [plot.most, (plot.most + plot.least) / 2, plot.least].map(plot.label);
  const left = Math.max(...marked.map(widthOf)) + 1;
  const right = words.length > 0 ? Math.max(...words.map(widthOf)) + 1 : 0;
  const wide = Math.max(4, columns - left - right);
  const picture = drawn(plot, wide, rows);
  const atRow = (value: number) => {
    const share = (value - plot.least) / (plot.most - plot.least || 1);
    return Math.max(0, Math.min(rows - 1, rows - 1 - Math.floor(share * rows * 0.9999)));
  };
  const lines = picture.map((cells, row) => {
    const mark =
      row === 0 ? marked[0]! : row === rows - 1 ? marked[2]! : row * 2 === rows - 1 ? marked[1]! : '';
    const word = plot.levels.find(({ value }) => atRow(value) === row)?.word ?? '';
    return pad(`${pad(mark, left - 1, 'right')} ${cells}${word === '' ? '' : ` ${word}`}`, columns);
  });
  return [...lines, pad(' '.repeat(left) + tickLine(plot, wide), columns)];
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
    if (!before || plot.joined === 'apart') return;
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
