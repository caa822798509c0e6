/** Several unknowns together, normal before any truncation: means, and covariance row by row. */
export interface Gaussian {
  readonly mean: Float64Array;
  readonly covariance: readonly Float64Array[];
}

/** What is known after one of the unknowns was seen to be `value`, with an error of that variance (0: exactly), and ln of the density of seeing it. */
export function seen(
  { mean, covariance }: Gaussian,
  which: number,
  value: number,
  variance: number,
): { readonly gaussian: Gaussian; readonly logDensity: number } {
  const row = covariance[which]!;
  const total = row[which]! + variance;
  const apart = value - mean[which]!;
  return {
    gaussian: {
      mean: mean.map((one, j) => one + (row[j]! / total) * apart),
      covariance: without(covariance, which, total),
    },
    logDensity: (-0.5 * (apart * apart)) / total - 0.5 * Math.log(2 * Math.PI * total),
  };
}

/** The covariance left once one of the unknowns has been seen; `total` is its own variance and the error's. */
export function without(
  covariance: readonly Float64Array[],
  which: number,
  total: number,
): readonly Float64Array[] {
  const row = covariance[which]!;
  return covariance.map((other, i) => other.map((value, j) => value - (row[i]! * row[j]!) / total));
}
