import { bump } from '../maths/bump.ts';
import { logNormalCdf, normalHazard } from '../maths/normal.ts';
import { positiveCdf, positivePart, positiveQuantile } from '../maths/positive-normal.ts';
import { gaussLegendre } from '../maths/quadrature.ts';

/** How run, rest and the level hang together: the same for many pairs. */
export interface PairShape {
  readonly sdRun: number;
  /** Rest given run: slope and sd. */
  readonly restOnRun: number;
  readonly sdRest: number;
  /** The level given both: slopes and sd. */
  readonly levelOnRun: number;
  readonly levelOnRest: number;
  readonly sdLevel: number;
}

/** Means before truncation. */
export interface PairMeans {
  readonly run: number;
  readonly rest: number;
  readonly level: number;
}

/** Run and rest, jointly normal, of which only what lies above zero in both is left; the level with them. */
export interface Pair {
  /** Natural log of the share that is left. */
  readonly logMass: number;
  readonly means: PairMeans;
  readonly shape: PairShape;
  /** Run: a rule of places with weights that add up to 1. */
  readonly places: Float64Array;
  readonly weights: Float64Array;
  /** Rest given run, before truncation. */
  restMean(run: number): number;
  levelMean(run: number, rest: number): number;
  runCdf(x: number): number;
  runQuantile(p: number): number;
}

/** The shape from a covariance of run, rest and level. A loss whose variance is 0 is known exactly. */
export function shapeOf([run, rest, level]: readonly Float64Array[]): PairShape {
  const [vRun, vRest, vLevel] = [run![0]!, rest![1]!, level![2]!];
  const restOnRun = vRun > 0 ? run![1]! / vRun : 0;
  const restLeft = Math.max(vRest - restOnRun * run![1]!, vRest * ROUNDING);
  const levelWithRun = run![2]!;
  const levelWithRest = rest![2]! - restOnRun * levelWithRun;
  const levelOnRest = levelWithRest / restLeft;
  const runSlope = vRun > 0 ? levelWithRun / vRun : 0;
  const left = vLevel - runSlope * levelWithRun - levelOnRest * levelWithRest;
  return {
    sdRun: Math.sqrt(Math.max(0, vRun)),
    restOnRun,
    sdRest: Math.sqrt(restLeft),
    levelOnRun: runSlope - levelOnRest * restOnRun,
    levelOnRest,
    sdLevel: Math.sqrt(Math.max(left, vLevel * ROUNDING)),
  };
}

/** Variances come from sums that cancel; this much of one is rounding. */
const ROUNDING = 1e-13;

/** Exact: run by its marginal density, tabulated in so many cells, rest given run in closed form. */
export function pairAboveZero(means: PairMeans, shape: PairShape, cells: number): Pair {
  const { sdRun, restOnRun, sdRest } = shape;
  const restMean = (run: number) => means.rest + restOnRun * (run - means.run);
  const levelMean = (run: number, rest: number) =>
    means.level + shape.levelOnRun * (run - means.run) + shape.levelOnRest * (rest - means.rest);
  const common = { means, shape, restMean, levelMean };
  if (sdRun === 0) {
    return {
      ...common,
      logMass: logNormalCdf(means.rest / sdRest),
      places: Float64Array.of(means.run),
      weights: Float64Array.of(1),
      runCdf: (x) => (x >= means.run ? 1 : 0),
      runQuantile: () => means.run,
    };
  }
  const steep = restOnRun / sdRest;
  const marginal = bump(
    {
      log(run) {
        const z = (run - means.run) / sdRun;
        return -0.5 * z * z + logNormalCdf(restMean(run) / sdRest);
      },
      slope: (run) => -(run - means.run) / (sdRun * sdRun) + steep * normalHazard(-restMean(run) / sdRest),
      curvature(run) {
        const within = restMean(run) / sdRest;
        const hazard = normalHazard(-within);
        return -1 / (sdRun * sdRun) - steep * steep * Math.max(0, hazard * (hazard + within));
      },
    },
    cells,
  );
  return {
    ...common,
    logMass: marginal.logMass - Math.log(sdRun) - 0.5 * Math.log(2 * Math.PI),
    places: marginal.places,
    weights: marginal.weights,
    runCdf: marginal.cdf,
    runQuantile: marginal.quantile,
  };
}

/** Adds up, with that weight, the pair's means and mean products: run, rest, run², run rest, rest². */
export function addMoments(pair: Pair, weight: number, sums: Float64Array): void {
  const { places, weights, shape } = pair;
  for (let i = 0; i < places.length; i += 1) {
    const share = weight * weights[i]!;
    if (share === 0) continue;
    const run = places[i]!;
    const rest = positivePart(pair.restMean(run), shape.sdRest);
    sums[0]! += share * run;
    sums[1]! += share * rest.mean;
    sums[2]! += share * run * run;
    sums[3]! += share * run * rest.mean;
    sums[4]! += share * (rest.mean * rest.mean + rest.variance);
  }
}

/** The chance that `hours` of running and a day together lose less than x. */
export function dayCdf(pair: Pair, hours: number, x: number): number {
  const { places, weights, shape } = pair;
  let sum = 0;
  for (let i = 0; i < places.length; i += 1) {
    const run = places[i]!;
    const left = x - hours * run;
    if (left > 0 && weights[i]! > LEAST_WEIGHT)
      sum += weights[i]! * positiveCdf(pair.restMean(run), shape.sdRest, left);
  }
  return sum;
}

/** Calls back with run, rest and weight over a rule of points for both. */
export function overPair(
  pair: Pair,
  points: number,
  visit: (run: number, rest: number, weight: number) => void,
): void {
  const rule = gaussLegendre(points);
  const { places, weights, shape } = pair;
  for (let i = 0; i < places.length; i += 1) {
    if (weights[i]! < LEAST_WEIGHT) continue;
    const expected = pair.restMean(places[i]!);
    for (let j = 0; j < points; j += 1) {
      const rest = positiveQuantile(expected, shape.sdRest, (1 + rule.places[j]!) / 2);
      visit(places[i]!, rest, (weights[i]! * rule.weights[j]!) / 2);
    }
  }
}

const LEAST_WEIGHT = 1e-6;
