import { assert } from '../trouble.ts';

/** A fit by least squares. Coefficients stand in the order of the columns. */
export interface Fit {
  readonly estimates: Float64Array;
  /** Covariance of the estimates for errors of sd 1, row by row. Rows divided by their own known sd make this the covariance itself. */
  readonly covariance: readonly Float64Array[];
  readonly residualSumOfSquares: number;
  /** Rows less columns. */
  readonly degreesOfFreedom: number;
  /** ln |det| of the triangular factor: half the ln of the determinant of X'X. */
  readonly logDeterminant: number;
}

/**
 * The coefficients b that bring the sum of b[j] * columns[j] nearest to `target`. Columns must be as long as the target, no fewer rows than columns, and
 * linearly independent (a prior given as one row a coefficient sees to that).
 *
 * Method: columns scaled to length 1, then Householder reflections (Golub and Van Loan, "Matrix Computations", 5.2 and 5.3); never the normal equations,
 * which square the error.
 */
export function leastSquares(columns: readonly Float64Array[], target: Float64Array): Fit {
  const count = columns.length;
  assert(
    target.length >= count && columns.every((column) => column.length === target.length),
    'columns and target do not fit',
  );
  const scales = columns.map(length);
  const work = columns.map((column, j) => column.map((value) => value / scales[j]!));
  const rest = target.slice();
  const diagonal = triangulate(work, rest);
  assert(
    diagonal.every((value) => Math.abs(value) > 0),
    'columns of a fit hang together',
  );
  const scaled = solveTriangle(work, diagonal, rest);
  return {
    estimates: scaled.map((value, j) => value / scales[j]!),
    covariance: covarianceFrom(inverseOfTriangle(work, diagonal), scales),
    residualSumOfSquares: rest.subarray(count).reduce((sum, value) => sum + value * value, 0),
    degreesOfFreedom: target.length - count,
    logDeterminant: diagonal.reduce((sum, value, j) => sum + Math.log(Math.abs(value) * scales[j]!), 0),
  };
}

/** Sd of the errors, estimated from what the fit leaves. */
export function residualSd(fit: Fit): number {
  return Math.sqrt(fit.residualSumOfSquares / fit.degreesOfFreedom);
}

/** Standard errors of the coefficients, for errors of that sd. */
export function standardErrors(fit: Fit, sd: number): Float64Array {
  return Float64Array.from(fit.covariance, (row, j) => sd * Math.sqrt(row[j]!));
}

function length(column: Float64Array): number {
  return Math.sqrt(column.reduce((sum, value) => sum + value * value, 0));
}

/** Turns the columns into a triangle: column k keeps its part above the diagonal, the diagonal is returned, `rest` is turned along. */
function triangulate(columns: readonly Float64Array[], rest: Float64Array): Float64Array {
  return Float64Array.from(columns, (column, j) => {
    const mirror = column.slice(j);
    const size = length(mirror);
    const diagonal = mirror[0]! > 0 ? -size : size;
    mirror[0]! -= diagonal;
    const halfSquare = size * Math.abs(mirror[0]!);
    if (halfSquare > 0)
      for (const other of [...columns.slice(j + 1), rest]) reflect(other.subarray(j), mirror, halfSquare);
    return diagonal;
  });
}

function reflect(values: Float64Array, mirror: Float64Array, halfSquare: number): void {
  let along = 0;
  for (let i = 0; i < mirror.length; i += 1) along += mirror[i]! * values[i]!;
  along /= halfSquare;
  for (let i = 0; i < mirror.length; i += 1) values[i]! -= along * mirror[i]!;
}

function solveTriangle(
  columns: readonly Float64Array[],
  diagonal: Float64Array,
  target: Float64Array,
): Float64Array {
  const solution = target.slice(0, columns.length);
  for (let j = columns.length - 1; j >= 0; j -= 1) {
    solution[j]! /= diagonal[j]!;
    for (let i = 0; i < j; i += 1) solution[i]! -= columns[j]![i]! * solution[j]!;
  }
  return solution;
}

/** Columns of the inverse, one a unit vector solved. */
function inverseOfTriangle(columns: readonly Float64Array[], diagonal: Float64Array): Float64Array[] {
  return columns.map((_, k) => {
    const unit = new Float64Array(columns.length);
    unit[k] = 1;
    return solveTriangle(columns, diagonal, unit);
  });
}

function covarianceFrom(inverse: readonly Float64Array[], scales: readonly number[]): Float64Array[] {
  return scales.map((rowScale, i) =>
    Float64Array.from(scales, (columnScale, j) => {
      const product = inverse.reduce((sum, column) => sum + column[i]! * column[j]!, 0);
      return product / (rowScale * columnScale);
    }),
  );
}
