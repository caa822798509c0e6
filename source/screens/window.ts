import { type Line, line, say } from './lines.ts';

/** As many of the lines as there are rows, those around the chosen stop; what is left out above and below is said. */
export function windowOf(lines: readonly Line[], chosen: string | null, rows: number): Line[] {
  if (lines.length <= rows) return [...lines];
  const at = lines.findIndex(({ stop }) => stop !== undefined && stop.key === chosen);
  return shownFrom(lines, at < 0 ? 0 : at - Math.floor(rows / 2), rows);
}

/** The lines from one on, never past the end; the first and last row say how many more there are. */
export function shownFrom(lines: readonly Line[], from: number, rows: number): Line[] {
  if (lines.length <= rows) return [...lines];
  const first = Math.max(0, Math.min(lines.length - rows, from));
  const shown = lines.slice(first, first + rows);
  const above = first + 1;
  const below = lines.length - first - rows + 1;
  if (first > 0) shown[0] = line(say(`    ↑ ${above} more lines`));
  if (below > 1) shown[rows - 1] = line(say(`    ↓ ${below} more lines`));
  return shown;
}
