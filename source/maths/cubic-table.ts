/**
 * A smooth function known at whole multiples of a step, from `first` times the step up: its values there and its slopes.
 * On such a grid what is read does not depend on where the table begins.
 */
export interface CubicTable {
  readonly first: number;
  readonly step: number;
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

/**
 * The function between its known points: cubic Hermite interpolation, whose error is at most step^4 / 384 times the largest fourth derivative
 * (any text on numerical analysis). Beyond the ends the end pieces run on.
 */
export function readTable({ first, step, values, slopes }: CubicTable, x: number): number {
  const along = x / step;
  const before = Math.max(first, Math.min(first + values.length - 2, Math.floor(along)));
  const i = before - first;
  const t = along - before;
  const rest = 1 - t;
  const atStart = values[i]! * (1 + 2 * t) + slopes[i]! * step * t;
  const atEnd = values[i + 1]! * (1 + 2 * rest) - slopes[i + 1]! * step * rest;
  return atStart * rest * rest + atEnd * t * t;
}
