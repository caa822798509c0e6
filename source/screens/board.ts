import { BLANK, beside, exactly, type Line, line, type Stop, say } from './lines.ts';
import type { Model, Size } from './model.ts';
import { type Panel, panelLines } from './panel.ts';
import { anodesPanel } from './panels/anodes.ts';
import { checksPanel } from './panels/checks.ts';
import { copyLines } from './panels/copy.ts';
import { engineHoursPanel } from './panels/engine-hours.ts';
import { fluidsPanel } from './panels/fluids.ts';
import { countdownLines, leavingLines, passageLines } from './panels/leaving.ts';
import { firstThingLines, readyLines } from './panels/ready.ts';
import { storesPanel } from './panels/stores.ts';
import { troubleLines } from './panels/trouble.ts';
import { reasonLines, verdictLines } from './panels/verdict.ts';
import type { ShownItem } from './shown-item.ts';
import { type Sight, sightOf } from './sight.ts';
import { windowOf } from './window.ts';

const GAP = 3;
/** Rows the panels need for the top to stand still while they move; with fewer, all of it moves. */
const PANELS_LEAST = 6;
const NARROW = 60;
/** Rows between the rules from which there is room for blank lines and the chart. */
const TALL = 28;
const CHART_LEAST = 4;
const CHART_MOST = 12;

/** The board under its heading: what stands still, then columns that move on their own. */
interface Layout {
  readonly still: readonly Line[];
  readonly moving: readonly { readonly lines: readonly Line[]; readonly width: number }[];
}

/** The board's lines between the rules, none wider than the window. */
export function boardLines(sight: Sight): Line[] {
  const rows = bodyRows(sight.model.size);
  const { still, moving } = layoutOf(sight);
  const room = rows - still.length;
  const blocks = moving.map(({ lines }) => windowOf(lines, sight.model.chosen, room));
  const widths = moving.map(({ width }) => width);
  return [...still, ...beside(blocks, widths, GAP)].slice(0, rows);
}

/** Every place the choice can rest on, in reading order. */
export function boardStops(model: Model): readonly Stop[] {
  return boardPlaces(model).flatMap(({ stop }) => (stop ? [stop] : []));
}

/** The lines of the whole board, those out of sight as well. */
export function boardPlaces(model: Model): readonly Line[] {
  const sight = sightOf(model);
  if (!sight) return [];
  const { still, moving } = layoutOf(sight);
  return [...still, ...moving.flatMap(({ lines }) => lines)];
}

/** Rows between the two rules. */
export function bodyRows({ rows }: Size): number {
  return rows - 4;
}

/** What of the model stands elsewhere than in the layout: its clock is that of the sight. */
const ELSEWHERE: ReadonlySet<string> = new Set<keyof Model>(['notice', 'now', 'pages', 'leftRound']);

/** What was laid out for the last frame serves the next key, which asks where the choice can go from there. */
let last: { readonly sight: Sight; readonly layout: Layout } | null = null;

function layoutOf(sight: Sight): Layout {
  if (last && looksAlike(last.sight, sight)) return last.layout;
  const { size } = sight.model;
  const layout = layOut(sight, size.columns, bodyRows(size));
  last = { sight, layout };
  return layout;
}

function looksAlike(one: Sight, other: Sight): boolean {
  const fields = Object.keys(other.model) as (keyof Model)[];
  return (
    one.at === other.at &&
    fields.every((field) => ELSEWHERE.has(field) || one.model[field] === other.model[field])
  );
}

function layOut(sight: Sight, columns: number, rows: number): Layout {
  const verdict = verdictLines(sight, columns);
  const tall = rows >= TALL;
  const top = [...verdict, ...topLines(sight, columns, { tall, chart: tall ? CHART_LEAST : 0 })];
  const room = rows - top.length;
  if (columns < NARROW || room < PANELS_LEAST) {
    const panels = columnLines(sight, panelsOf(sight).flat(), columns, 0);
    return {
      still: verdict,
      moving: [{ lines: [...smallLines(sight, columns), ...panels], width: columns }],
    };
  }
  const blocks = blocksOf(sight, columns, rows);
  const width = Math.floor((columns - GAP * (blocks.length - 1)) / blocks.length);
  const moving = blocks.map((panels) => ({ lines: columnLines(sight, panels, width, room), width }));
  const spare = room - Math.max(...moving.map(({ lines }) => lines.length));
  if (!tall || spare <= 0) return { still: top, moving };
  const chart = Math.min(CHART_MOST, CHART_LEAST + spare);
  return { still: [...verdict, ...topLines(sight, columns, { tall, chart })], moving };
}

/** What stands above the panels: why, what is wrong, when to leave, what to do first. */
function topLines(sight: Sight, columns: number, { tall, chart }: { tall: boolean; chart: number }): Line[] {
  const gap = tall ? [BLANK] : [];
  return [
    ...reasonLines(sight, columns, tall ? 3 : 2),
    ...troubleLines(sight, columns),
    ...copyLines(sight, 'top', columns),
    ...gap,
    ...leavingLines(sight, columns, chart),
    ...gap,
    ...readyLines(sight, columns, tall ? 4 : 2),
    ...gap,
  ];
}

/** The same where there is little room: why, the first thing to do and the countdown first, then the rest. */
function smallLines(sight: Sight, columns: number): Line[] {
  return [
    ...reasonLines(sight, columns, 2),
    ...firstThingLines(sight, columns),
    ...countdownLines(sight, columns),
    ...troubleLines(sight, columns),
    ...copyLines(sight, 'top', columns),
    ...passageLines(sight, columns),
    ...readyLines(sight, columns, 3),
  ];
}

/** A panel ready to be drawn. Of those in a column the one with the least `keep` folds first. */
interface Drawn {
  readonly keep: number;
  readonly lines: (width: number) => (folding: boolean) => Line[];
}

/** The panels in reading order, in the three blocks they stand in where the page is widest. */
function panelsOf(sight: Sight): [Drawn[], Drawn[], Drawn[]] {
  const of = <I extends ShownItem>(panel: Panel<I>, keep: number): Drawn => ({
    keep,
    lines: (width) => panelLines(sight, panel, width),
  });
  return [
    [of(engineHoursPanel(sight), 2), of(fluidsPanel(sight), 4)],
    [of(anodesPanel(sight), 3), of(storesPanel(sight), 0)],
    [of(checksPanel(sight), 1)],
  ];
}

function blocksOf(sight: Sight, columns: number, rows: number): Drawn[][] {
  const [first, second, third] = panelsOf(sight);
  if (columns >= 160) return [first, second, third];
  if (columns >= 100 && rows >= 20) return [first, [...second, ...third]];
  return [[...first, ...second, ...third]];
}

/** The panels under one another, as few of them folded as must be for the rest to have room. */
function columnLines(sight: Sight, panels: readonly Drawn[], width: number, room: number): Line[] {
  const gap = bodyRows(sight.model.size) >= TALL ? [BLANK] : [];
  const foldingOrder = [...panels].sort((one, other) => one.keep - other.keep);
  const drawn = panels.map((panel) => {
    const lines = panel.lines(width);
    return { panel, open: lines(false), shut: lines(true) };
  });
  const joined = (folded: number) =>
    drawn
      .map(({ panel, open, shut }) => (foldingOrder.indexOf(panel) < folded ? shut : open))
      .filter((lines) => lines.length > 0)
      .flatMap((lines, index) => (index === 0 ? lines : [...gap, ...lines]));
  for (let folded = 0; folded < panels.length; folded += 1) {
    const lines = joined(folded);
    if (lines.length <= room) return lines;
  }
  return joined(panels.length);
}

/** A rule across the page. */
export function rule(columns: number): Line {
  return line(say('─'.repeat(columns)));
}

export function filled(lines: readonly Line[], columns: number, rows: number): Line[] {
  return Array.from({ length: rows }, (_, row) => exactly(lines[row] ?? BLANK, columns));
}
