import { leastSquares } from '../maths/least-squares.ts';
import { type Gaussian, seen } from './gaussian.ts';
import type { Part } from './rate-prior.ts';
import type { Rows } from './whiten.ts';

/** Where the unknowns stand in a joint: the two losses, the level at the end moment, then the shortfalls of readings off the stick. */
export const RUN = 0;
export const REST = 1;
export const SHORTFALLS = 3;

/** What is thought of an offset beforehand: that of a way of reading. A shortfall has none. */
export interface OffsetPrior {
  readonly mean: number;
  readonly sd: number;
}

export interface Fitted {
  /** Run, rest, level, shortfalls; before truncation, and before anything but `vague` was thought of run and rest. */
  readonly joint: Gaussian;
  /** The offsets that are ways of reading, in order. */
  readonly ways: readonly OffsetPrior[];
  /** ln of the density of the readings, with the vague prior. */
  readonly logEvidence: number;
}

/**
 * Fits the whitened rows, with one row more for each prior. The two losses get the vague prior normal(0, vague), which `withParts` puts the true one in the place of: so the
 * rows are fitted once for all kinds of leak.
 */
export function fitRows(rows: Rows, ways: readonly OffsetPrior[], vague: number, hasRun: boolean): Fitted {
  const first = hasRun ? RUN : REST;
  const used = rows.columns.slice(first);
  const priors = [...(hasRun ? [{ mean: 0, sd: vague }] : []), { mean: 0, sd: vague }, ...ways];
  const count = rows.target.length;
  const columns = used.map((column, j) => {
    const all = new Float64Array(count + priors.length);
    all.set(column);
    if (j < priors.length) all[count + j] = 1 / priors[j]!.sd;
    return all;
  });
  const target = new Float64Array(count + priors.length);
  target.set(rows.target);
  priors.forEach(({ mean, sd }, j) => {
    target[count + j] = mean / sd;
  });
  const fit = leastSquares(columns, target);
  const { estimates, covariance } = fit;
  const along = rows.end.coefficients.slice(first);
  const level = {
    mean: rows.end.target + dot(along, estimates),
    with: Float64Array.from(estimates, (_, i) => dot(along, covariance[i]!)),
  };
  const variance = rows.end.variance + dot(along, level.with);
  const wayAt = hasRun ? 2 : 1;
  const from = [hasRun ? 0 : null, hasRun ? 1 : 0, 'level' as const];
  for (let j = wayAt + ways.length; j < used.length; j += 1) from.push(j);
  const entry = (a: (typeof from)[number], b: (typeof from)[number]) => {
    if (a === null || b === null) return 0;
    if (a === 'level') return b === 'level' ? variance : level.with[b]!;
    return b === 'level' ? level.with[a]! : covariance[a]![b]!;
  };
  const priorScale = priors.reduce((sum, { sd }) => sum - Math.log(sd), 0);
  const freeColumns = used.length - priors.length;
  return {
    logEvidence:
      rows.logScale +
      priorScale -
      0.5 * fit.residualSumOfSquares -
      fit.logDeterminant -
      0.5 * (count - freeColumns) * Math.log(2 * Math.PI),
    joint: {
      mean: Float64Array.from(from, (a) => (a === null ? 0 : a === 'level' ? level.mean : estimates[a]!)),
      covariance: from.map((a) => Float64Array.from(from, (b) => entry(a, b))),
    },
    ways: ways.map((_, j) => ({
      mean: estimates[wayAt + j]!,
      sd: Math.sqrt(covariance[wayAt + j]![wayAt + j]!),
    })),
  };
}

/**
 * The joint once a loss has a part (before truncation) for its prior in the place of normal(0, vague), and ln of how well that part foretold the readings, up to what all parts share.
 * The ratio of the two priors is itself a normal in the loss: one more thing seen of it.
 */
export function withPart(
  joint: Gaussian,
  which: typeof RUN | typeof REST,
  part: Part,
  vague: number,
): { readonly joint: Gaussian; readonly logEvidence: number } {
  if (part.sd === 0) return { joint, logEvidence: 0 };
  const variance = part.sd * part.sd;
  const narrower = 1 / (1 - variance / (vague * vague));
  const { gaussian, logDensity } = seen(joint, which, part.mean * narrower, variance * narrower);
  const scale = Math.log(vague / part.sd) + 0.5 * Math.log(2 * Math.PI * variance * narrower);
  const shift = (part.mean * part.mean * narrower) / (2 * vague * vague);
  return { joint: gaussian, logEvidence: logDensity + scale + shift };
}

function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
