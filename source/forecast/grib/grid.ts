import { Refused } from './refused.ts';

/** A regular grid of latitudes and longitudes. Values are handed out by rows from north to south, each from west to east, whatever way the file holds them. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly north: number;
  /** Of the first column, -180 up to, not including, 180. */
  readonly west: number;
  /** Degrees between rows and between columns; where there is but one, the size the header gives it, 0 where it gives none. */
  readonly rowDeg: number;
  readonly columnDeg: number;
  /** The last column's neighbour is the first. */
  readonly round: boolean;
  readonly scan: Scan;
}

/** The order of the values in the file (flag table 3.4 of edition 2, the same bits in code table 8 of edition 1). */
interface Scan {
  readonly westward: boolean;
  readonly northward: boolean;
  readonly byColumns: boolean;
  /** Every second row (or column) runs the other way. */
  readonly alternating: boolean;
}

/** What a header says of a grid, in degrees. */
export interface GridHeader {
  readonly columns: number;
  readonly rows: number;
  readonly firstLat: number;
  readonly firstLon: number;
  readonly lastLat: number;
  readonly lastLon: number;
  /** Null where not given. */
  readonly columnDeg: number | null;
  readonly rowDeg: number | null;
  readonly scanFlags: number;
  /** The smallest difference the header can express. */
  readonly unitDeg: number;
}

/** More points than any forecast by mail: a quarter of a degree all round the world is 1.04 million. */
const MOST_POINTS = 2_100_000;

/** The grid of a header. Steps come from the corners, which are exact where a step such as 1/6 degree is not; refuses a header that contradicts itself. */
export function gridFrom(header: GridHeader): Grid {
  const { columns, rows, firstLat, firstLon, lastLat, lastLon, scanFlags, unitDeg } = header;
  if (columns < 1 || rows < 1) throw contradiction('without points');
  if (columns * rows > MOST_POINTS)
    throw new Refused({ kind: 'grid', name: `${columns} x ${rows} points, more than are read` });
  const scan = scanFrom(scanFlags);
  const [rise, east] = [
    scan.northward ? lastLat - firstLat : firstLat - lastLat,
    modulo(scan.westward ? firstLon - lastLon : lastLon - firstLon, 360),
  ];
  if (Math.max(Math.abs(firstLat), Math.abs(lastLat)) > 90 + unitDeg) throw contradiction('past a pole');
  const rowDeg = step(rise, rows, header.rowDeg, unitDeg);
  const columnDeg = step(east < unitDeg && columns > 1 ? 360 : east, columns, header.columnDeg, unitDeg);
  const west = scan.westward ? lastLon : firstLon;
  return {
    ...{ columns, rows, rowDeg, columnDeg, scan },
    north: scan.northward ? lastLat : firstLat,
    west: modulo(west + 180, 360) - 180,
    round: columns > 1 && Math.abs(columns * columnDeg - 360) < columnDeg / 2,
  };
}

/** Puts the values of a file in the order rows from north to south, each from west to east. */
export function inOrder(values: Float64Array, { columns, rows, scan }: Grid): Float64Array {
  const { westward, northward, byColumns, alternating } = scan;
  if (!westward && !northward && !byColumns && !alternating) return values;
  const ordered = new Float64Array(values.length);
  const [lines, along] = byColumns ? [columns, rows] : [rows, columns];
  for (let line = 0; line < lines; line += 1) {
    for (let place = 0; place < along; place += 1) {
      const step = alternating && line % 2 === 1 ? along - 1 - place : place;
      const [i, j] = byColumns ? [line, step] : [step, line];
      const column = westward ? columns - 1 - i : i;
      const row = northward ? rows - 1 - j : j;
      ordered[row * columns + column] = values[line * along + place]!;
    }
  }
  return ordered;
}

/** The corners of a grid in degrees; east -180 up to, not including, 180, so that it may lie below west. */
export function areaOf({ north, west, rows, columns, rowDeg, columnDeg }: Grid): {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
} {
  const east = modulo(west + (columns - 1) * columnDeg + 180, 360) - 180;
  return { south: north - (rows - 1) * rowDeg, north, west, east };
}

export function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}

function scanFrom(flags: number): Scan {
  if (flags & 0x0f) throw new Refused({ kind: 'grid', name: 'a grid with rows or columns set off' });
  return {
    westward: (flags & 0x80) !== 0,
    northward: (flags & 0x40) !== 0,
    byColumns: (flags & 0x20) !== 0,
    alternating: (flags & 0x10) !== 0,
  };
}

function step(span: number, count: number, given: number | null, unitDeg: number): number {
  if (count === 1) return given ?? 0;
  const slack = unitDeg * (count + 1);
  if (span < unitDeg || (given !== null && Math.abs(given * (count - 1) - span) > slack))
    throw contradiction('whose corners, steps and directions disagree');
  return span / (count - 1);
}

function contradiction(what: string): Refused {
  return new Refused({ kind: 'damaged', name: `a grid ${what}` });
}
