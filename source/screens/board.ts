import { BLANK, beside, exactly, type Line, line, type Stop, say } from './lines.ts';
import type { Model, Size } from './model.ts';
import { type Panel, panelLines } from './panel.ts';
import { anodesPanel } from './panels/anodes.ts';
import { checksPanel } from './panels/checks.ts';
import { engineHoursPanel } from './panels/engine-hours.ts';
import { fluidsPanel } from './panels/fluids.ts';
import { leavingLines } from './panels/leaving.ts';
import { readyLines } from './panels/ready.ts';
import { storesPanel } from './panels/stores.ts';
import { troubleLines } from './panels/trouble.ts';
import { reasonLines, verdictLines } from './panels/verdict.ts';
import type { ShownItem } from './shown-item.ts';
import { type Sight, sightOf } from './sight.ts';
import { windowOf } from './window.ts';

const GAP = 3;
/** Rows a page needs under its heading before the top stands still while the panels move. */
const PANELS_LEAST = 6;

/** The board under its heading: what stands still, then columns that move on their own. */
interface Layout {
  readonly still: readonly Line[];
  readonly moving: readonly { readonly lines: readonly Line[]; readonly width: number }[];
}

/** The board's lines under the heading: exactly `rows` of them, none wider than `columns`. */
export function boardLines(sight: Sight, columns: number, rows: number): Line[] {
  const { still, moving } = layoutOf(sight, columns, rows);
  const room = rows - still.length;
  const blocks = moving.map(({ lines }) => windowOf(lines, sight.model.chosen, room));
  const widths = moving.map(({ width }) => width);
  return [...still, ...beside(blocks, widths, GAP)].slice(0, rows);
}

/** Every place the choice can rest on, in reading order. */
export function boardStops(model: Model): readonly Stop[] {
  const sight = sightOf(model);
  if (!sight) return [];
  const { still, moving } = layoutOf(sight, model.size.columns, bodyRows(model.size));
  const lines = [...still, ...moving.flatMap((block) => block.lines)];
  return lines.flatMap(({ stop }) => (stop ? [stop] : []));
}

/** Rows between the two rules. */
export function bodyRows({ rows }: Size): number {
  return rows - 4;
}

function layoutOf(sight: Sight, columns: number, rows: number): Layout {
  const verdict = verdictLines(sight, columns);
  const top = [...verdict, ...topLines(sight, columns, rows)];
  const room = rows - top.length;
  const small = room < PANELS_LEAST || columns < 60;
  if (small) {
    const panels = columnLines(sight, panelsOf(sight).flat(), columns, 0);
    const lines = [...topLines(sight, columns, rows), ...panels];
    return { still: verdict, moving: [{ lines, width: columns }] };
  }
  const blocks = blocksOf(sight, columns, rows);
  const width = Math.floor((columns - GAP * (blocks.length - 1)) / blocks.length);
  return {
    still: top,
    moving: blocks.map((panels) => ({ lines: columnLines(sight, panels, width, room), width })),
  };
}

function topLines(sight: Sight, columns: number, rows: number): Line[] {
  const tall = rows >= 28;
  const gap = tall ? [BLANK] : [];
  const chart = columns < 60 ? 0 : rows >= 44 ? 8 : tall ? 4 : 0;
  const most = columns < 60 ? 1 : rows >= 44 ? 6 : tall ? 3 : 2;
  return [
    ...reasonLines(sight, columns, tall ? 3 : 2),
    ...troubleLines(sight, columns),
    ...gap,
    ...leavingLines(sight, columns, chart),
    ...gap,
    ...readyLines(sight, columns, most),
    ...gap,
  ];
}

type AnyPanel = (folding: boolean, width: number) => Line[];

/** The panels in reading order, in the three blocks they stand in where the page is widest. */
function panelsOf(sight: Sight): [AnyPanel[], AnyPanel[], AnyPanel[]] {
  const of =
    <I extends ShownItem>(panel: Panel<I>): AnyPanel =>
    (folding, width) =>
      panelLines(sight, panel, width, folding);
  return [
    [of(engineHoursPanel(sight)), of(fluidsPanel(sight))],
    [of(anodesPanel(sight)), of(storesPanel(sight))],
    [of(checksPanel(sight))],
  ];
}

function blocksOf(sight: Sight, columns: number, rows: number): AnyPanel[][] {
  const [first, second, third] = panelsOf(sight);
  if (columns >= 160) return [first, second, third];
  if (columns >= 100 && rows >= 20) return [first, [...second, ...third]];
  return [[...first, ...second, ...third]];
}

/** The panels under one another. The last folds first, and only as many fold as must for the rest to have room. */
function columnLines(sight: Sight, panels: readonly AnyPanel[], width: number, room: number): Line[] {
  const gap = bodyRows(sight.model.size) >= 28 ? [BLANK] : [];
  const joined = (unfolded: number) =>
    panels
      .map((panel, index) => panel(index >= unfolded, width))
      .filter((lines) => lines.length > 0)
      .flatMap((lines, index) => (index === 0 ? lines : [...gap, ...lines]));
  for (let unfolded = panels.length; unfolded > 0; unfolded -= 1) {
    const lines = joined(unfolded);
    if (lines.length <= room) return lines;
  }
  return joined(0);
}

/** A rule across the page. */
export function rule(columns: number): Line {
  return line(say('─'.repeat(columns)));
}

export function filled(lines: readonly Line[], columns: number, rows: number): Line[] {
  return Array.from({ length: rows }, (_, row) => exactly(lines[row] ?? BLANK, columns));
}
