/** A smooth function known at even steps: its values there and its slopes. */
export interface CubicTable {
  readonly from: number;
  readonly step: number;
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

/**
 * The function between its known points: cubic Hermite interpolation, whose error is at most step^4 / 384 times the largest fourth derivative
 * (any text on numerical analysis). Beyond the ends the end pieces run on.
 */
export function readTable({ from, step, values, slopes }: CubicTable, x: number): number {
  const along = (x - from) / step;
  const i = Math.max(0, Math.min(values.length - 2, Math.floor(along)));
  const t = along - i;
  const rest = 1 - t;
  const atStart = values[i]! * (1 + 2 * t) + slopes[i]! * step * t;
  const atEnd = values[i + 1]! * (1 + 2 * rest) - slopes[i + 1]! * step * rest;
  return atStart * rest * rest + atEnd * t * t;
}
