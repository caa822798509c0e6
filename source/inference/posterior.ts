import { logNormalCdf } from '../maths/normal.ts';
import type { Gaussian } from './gaussian.ts';
import { imagine } from './imagined.ts';
import { REST, RUN, withPart } from './joint.ts';
import { addMoments, type Pair, pairAboveZero, shapeOf } from './pair.ts';
import type { Part, RatePriors } from './rate-prior.ts';

/** What the readings say of run, rest and level: a mixture of pairs above zero (model 3.2), weights adding up to 1. */
export interface Posterior {
  readonly members: readonly Member[];
  /** Means of run, rest and the level, and the covariance of run and rest. */
  readonly run: number;
  readonly rest: number;
  readonly level: number;
  readonly varRun: number;
  readonly varRest: number;
  readonly covRunRest: number;
  readonly varLevel: number;
  readonly covLevelRun: number;
  /** ln of how well the priors foretold the readings, up to what all priors over the same rows share. */
  readonly logEvidence: number;
}

export interface Member {
  readonly weight: number;
  readonly pair: Pair;
}

/** Points over several readings off the stick, and cells for one pair where there are few and where there are hundreds that smooth each other. Rough is for means alone. */
const DETAIL = {
  fine: { points: 256, cells: 64, cellsOfMany: 24 },
  rough: { points: 64, cells: 32, cellsOfMany: 16 },
} as const;
const FEW = 4;
/** What weighs less than this, e^-18 of the heaviest, is left out. */
const LIGHT = 18;

/** The joint, whose losses have the vague prior normal(0, vague), with the two-part priors in its place: every kind of leak weighed by how well it foretold the readings. */
export function posteriorOf(
  joint: Gaussian,
  priors: RatePriors,
  vague: number,
  detail: keyof typeof DETAIL,
): Posterior {
  const { points, cells, cellsOfMany } = DETAIL[detail];
  const candidates = kindsOf(priors).flatMap(({ run, rest }) => {
    const first = withPart(joint, RUN, run, vague);
    const second = withPart(first.joint, REST, rest, vague);
    const { covariance, ways } = imagine(second.joint, points);
    const shape = shapeOf(covariance);
    const logPrior = Math.log(run.chance * rest.chance) - logShareAboveZero(run) - logShareAboveZero(rest);
    const logKind = logPrior + first.logEvidence + second.logEvidence;
    return ways.map(({ logWeight, mean }) => ({
      shape,
      means: { run: mean[0]!, rest: mean[1]!, level: mean[2]! },
      logWeight: logKind + logWeight,
    }));
  });
  const each = candidates.length > FEW ? cellsOfMany : cells;
  const heard = heaviest(candidates).map(({ means, shape, logWeight }) => {
    const pair = pairAboveZero(means, shape, each);
    return { pair, logWeight: logWeight + pair.logMass };
  });
  return mixed(heaviest(heard));
}

/** The two parts of each loss, paired: tight, leaking running, leaking lying, both. Those without a chance are left out. */
function kindsOf({ run, rest }: RatePriors): readonly { run: Part; rest: Part }[] {
  return [run.usual, run.leak].flatMap((a) =>
    [rest.usual, rest.leak].flatMap((b) => (a.chance * b.chance > 0 ? [{ run: a, rest: b }] : [])),
  );
}

function logShareAboveZero({ mean, sd }: Part): number {
  return sd === 0 ? 0 : logNormalCdf(mean / sd);
}

function heaviest<T extends { readonly logWeight: number }>(all: readonly T[]): readonly T[] {
  const most = all.reduce((top, { logWeight }) => Math.max(top, logWeight), Number.NEGATIVE_INFINITY);
  return all.filter(({ logWeight }) => logWeight > most - LIGHT);
}

function mixed(heard: readonly { readonly pair: Pair; readonly logWeight: number }[]): Posterior {
  const most = heard.reduce((top, { logWeight }) => Math.max(top, logWeight), Number.NEGATIVE_INFINITY);
  const total = heard.reduce((sum, { logWeight }) => sum + Math.exp(logWeight - most), 0);
  const members = heard.map(({ pair, logWeight }) => ({
    pair,
    weight: Math.exp(logWeight - most) / total,
  }));
  const sums = new Float64Array(5);
  let level = 0;
  let levelSquare = 0;
  let levelRun = 0;
  const reference = members[0]!.pair.means.level;
  for (const { pair, weight } of members) {
    const own = new Float64Array(5);
    addMoments(pair, 1, own);
    for (let i = 0; i < own.length; i += 1) sums[i]! += weight * own[i]!;
    const apart = pair.levelMean(own[0]!, own[1]!) - reference;
    level += weight * apart;
    levelSquare += weight * (apart * apart + levelVariance(pair, own));
    levelRun += weight * (apart * own[0]! + levelWithRun(pair, own));
  }
  const [run, rest, runSquare, product, restSquare] = sums as unknown as [
    number,
    number,
    number,
    number,
    number,
  ];
  return {
    members,
    run,
    rest,
    level: reference + level,
    varRun: Math.max(0, runSquare - run * run),
    varRest: Math.max(0, restSquare - rest * rest),
    covRunRest: product - run * rest,
    varLevel: levelSquare - level * level,
    covLevelRun: levelRun - level * run,
    logEvidence: most + Math.log(total),
  };
}

function levelVariance({ shape }: Pair, own: Float64Array): number {
  const [run, rest, runSquare, product, restSquare] = own as unknown as [
    number,
    number,
    number,
    number,
    number,
  ];
  const { levelOnRun: a, levelOnRest: b, sdLevel } = shape;
  return (
    sdLevel * sdLevel +
    a * a * (runSquare - run * run) +
    2 * a * b * (product - run * rest) +
    b * b * (restSquare - rest * rest)
  );
}

function levelWithRun({ shape }: Pair, own: Float64Array): number {
  const [run, rest, runSquare, product] = own as unknown as [number, number, number, number];
  return shape.levelOnRun * (runSquare - run * run) + shape.levelOnRest * (product - run * rest);
}
