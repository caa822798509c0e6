import { logNormalCdf } from '../maths/normal.ts';
import { positivePart, positiveQuantile } from '../maths/positive-normal.ts';
import { gaussLegendre } from '../maths/quadrature.ts';
import { type Gaussian, without } from './gaussian.ts';
import { SHORTFALLS } from './joint.ts';

/** One way the readings off the stick may have fallen: the unknowns given that, all with the same covariance, and ln of its weight. */
interface Imagined {
  readonly logWeight: number;
  /** Run, rest, level. */
  readonly mean: Float64Array;
}

export interface Imaginings {
  readonly covariance: readonly Float64Array[];
  readonly ways: readonly Imagined[];
}

/**
 * A reading off the stick says only that it fell short of the stick's end (or rose above): its shortfall is an unknown above zero. This lays a rule of points over all shortfalls
 * together, each drawn above zero given those before it; weights are the chances met on the way. Given the shortfalls, what is left is a plain normal.
 *
 * One shortfall: Gauss-Legendre. More: the separation of variables of A. Genz, "Numerical computation of multivariate normal probabilities", J. Comp. Graph. Stat. 1 (1992), 141-149, on a
 * Kronecker lattice of so many `points`, folded by the baker's transformation.
 */
export function imagine(joint: Gaussian, points: number): Imaginings {
  const { steps, covariance } = inOrder(joint);
  const ways = pointsFor(steps.length, points).map(({ weight, at }) => {
    const mean = joint.mean.slice();
    let logWeight = Math.log(weight);
    steps.forEach(({ which, sd, gain }, k) => {
      const expected = mean[which]!;
      logWeight += logNormalCdf(expected / sd);
      move(mean, gain, positiveQuantile(expected, sd, at(k)) - expected);
    });
    return { logWeight, mean: mean.slice(0, SHORTFALLS) };
  });
  return { ways, covariance: covariance.slice(0, SHORTFALLS).map((row) => row.slice(0, SHORTFALLS)) };
}

/** One shortfall among those still unknown, its sd given those before it, and how much all move with it. */
interface Step {
  readonly which: number;
  readonly sd: number;
  readonly gain: Float64Array;
}

/** The shortfalls, at each turn the one least likely to be above zero (Genz's paper, after Gibson, Glasbey and Elston 1994): what follows then follows almost by itself. */
function inOrder(joint: Gaussian): { steps: readonly Step[]; covariance: readonly Float64Array[] } {
  const steps: Step[] = [];
  const mean = joint.mean.slice();
  let { covariance } = joint;
  const left = new Set(Array.from(mean.keys()).slice(SHORTFALLS));
  while (left.size > 0) {
    const above = (j: number) => mean[j]! / Math.sqrt(covariance[j]![j]!);
    const which = [...left].reduce((least, j) => (above(j) < above(least) ? j : least));
    const own = covariance[which]![which]!;
    const sd = Math.sqrt(own);
    const gain = covariance[which]!.map((value) => value / own);
    move(mean, gain, positivePart(mean[which]!, sd).mean - mean[which]!);
    covariance = without(covariance, which, own);
    steps.push({ which, sd, gain });
    left.delete(which);
  }
  return { steps, covariance };
}

function move(mean: Float64Array, gain: Float64Array, by: number): void {
  for (let i = 0; i < mean.length; i += 1) mean[i]! += gain[i]! * by;
}

interface Point {
  readonly weight: number;
  readonly at: (dimension: number) => number;
}

const ONE = 32;

function pointsFor(dimensions: number, points: number): readonly Point[] {
  if (dimensions === 0) return [{ weight: 1, at: () => 0.5 }];
  if (dimensions === 1) {
    const { places, weights } = gaussLegendre(ONE);
    return Array.from(places, (place, i) => ({ weight: weights[i]! / 2, at: () => (1 + place) / 2 }));
  }
  const steps = primes.slice(0, dimensions - 1).map(Math.sqrt);
  return Array.from({ length: points }, (_, i) => ({
    weight: 1 / points,
    at: (k) => (k === 0 ? (i + 0.5) / points : folded(i + 0.5, steps[k - 1]!)),
  }));
}

function folded(i: number, step: number): number {
  const at = 1 - Math.abs(2 * ((i * step) % 1) - 1);
  return Math.min(1 - CLOSEST, Math.max(CLOSEST, at));
}

const CLOSEST = 1e-4;

const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31];
