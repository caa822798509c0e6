import type { Position } from '../forecast.ts';
import { type Grid, modulo } from './grid.ts';

/** Which points of a grid speak for a position, and how much each; weights add up to 1. */
export interface Taken {
  readonly points: readonly number[];
  readonly weights: readonly number[];
  /** How far the one point taken lies from the position, nm; 0 where the position lies between the points taken. */
  readonly awayNm: number;
}

/** Where a position lies on a grid, in rows from the north and columns from the west, with fractions. */
export interface Spot {
  readonly grid: Grid;
  readonly at: Position;
  readonly row: number;
  readonly column: number;
}

/** Sea further off than this says nothing of a place (judgement, no source). */
const MOST_SEA_NM = 60;
/** A grid of one row or column without a step speaks for so much on either side (judgement: half a degree, the step of common forecasts). */
const ALONE_DEG = 0.25;
/** Positions are typed to some decimals: so much of a step outside the edge still counts as on it. */
const SLACK = 1e-4;
const NM_A_DEGREE = 60;

/** Null where the grid does not reach the position. */
export function spotOn(grid: Grid, at: Position): Spot | null {
  const { rows, columns, north, west, rowDeg, columnDeg, round } = grid;
  const row = along(north - at[0], rowDeg, rows);
  const east = modulo(at[1] - west, 360);
  // Just west of the first column is nearly all the way round.
  const justWest = !round && east > 360 - Math.max(columnDeg / 2, ALONE_DEG);
  const column = along(justWest ? east - 360 : east, columnDeg, columns, round);
  return row === null || column === null ? null : { grid, at, row, column };
}

function along(degrees: number, stepDeg: number, count: number, round = false): number | null {
  if (count === 1) return Math.abs(degrees) <= (stepDeg > 0 ? stepDeg / 2 : ALONE_DEG) + SLACK ? 0 : null;
  const place = degrees / stepDeg;
  const last = round ? count : count - 1;
  if (place < -SLACK || place > last + SLACK) return null;
  return Math.min(Math.max(place, 0), last);
}

/** Between the points around where all of them are sea; else the nearest point that is. Null where there is none near. */
export function taken(spot: Spot, isSea: (point: number) => boolean): Taken | null {
  const around = corners(spot);
  if (around.points.every(isSea)) return { ...around, awayNm: aloneNm(spot) };
  return nearestSea(spot, isSea);
}

function corners({ grid, row, column }: Spot): Omit<Taken, 'awayNm'> {
  const { columns, rows } = grid;
  const [top, left] = [Math.min(Math.floor(row), rows - 1), Math.floor(column)];
  const [down, right] = [row - top, column - left];
  const all = [
    { row: top, column: left, weight: (1 - down) * (1 - right) },
    { row: top, column: left + 1, weight: (1 - down) * right },
    { row: top + 1, column: left, weight: down * (1 - right) },
    { row: top + 1, column: left + 1, weight: down * right },
  ].filter(({ weight }) => weight > SLACK * SLACK);
  return {
    points: all.map((one) => one.row * columns + (one.column % columns)),
    weights: all.map(({ weight }) => weight),
  };
}

/** A grid of one row or column is not between anything. */
function aloneNm(spot: Spot): number {
  const { grid, row, column } = spot;
  if (grid.rows > 1 && grid.columns > 1) return 0;
  return distanceNm(spot, Math.round(row), Math.round(column));
}

function nearestSea(spot: Spot, isSea: (point: number) => boolean): Taken | null {
  const { grid, row, column } = spot;
  const [reachRows, reachColumns] = reach(spot);
  let best: Taken | null = null;
  let least = MOST_SEA_NM;
  for (
    let r = Math.max(0, Math.ceil(row - reachRows));
    r <= Math.min(grid.rows - 1, row + reachRows);
    r += 1
  ) {
    for (let c = Math.ceil(column - reachColumns); c <= column + reachColumns; c += 1) {
      if (!grid.round && (c < 0 || c >= grid.columns)) continue;
      const point = r * grid.columns + modulo(c, grid.columns);
      const away = distanceNm(spot, r, c);
      if (away > least || !isSea(point)) continue;
      least = away;
      best = { points: [point], weights: [1], awayNm: away };
    }
  }
  return best;
}

function reach({ grid, at }: Spot): readonly [rows: number, columns: number] {
  const { rowDeg, columnDeg, rows, columns } = grid;
  const degrees = MOST_SEA_NM / NM_A_DEGREE;
  const shrink = Math.max(0.05, Math.cos((Math.min(89, Math.abs(at[0]) + degrees) * Math.PI) / 180));
  return [
    rowDeg > 0 ? Math.min(rows, degrees / rowDeg) : 0,
    columnDeg > 0 ? Math.min(columns / 2, degrees / shrink / columnDeg) : 0,
  ];
}

/** Over so short a distance the earth is flat, and a minute of latitude a mile. */
function distanceNm({ grid, at }: Spot, row: number, column: number): number {
  const lat = grid.north - row * grid.rowDeg;
  const east = modulo(grid.west + column * grid.columnDeg - at[1] + 180, 360) - 180;
  const shrink = Math.cos((((lat + at[0]) / 2) * Math.PI) / 180);
  return NM_A_DEGREE * Math.hypot(lat - at[0], east * shrink);
}
