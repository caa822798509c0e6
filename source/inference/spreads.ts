import { normalCdf } from '../maths/normal.ts';
import { normalQuantile } from '../maths/normal-quantile.ts';
import type { Spread } from './belief.ts';
import { chooserOf } from './chooser.ts';
import { dayCdf, overPair } from './pair.ts';
import type { Member, Posterior } from './posterior.ts';

const TENTH = 0.1;

export function runSpread(posterior: Posterior): Spread {
  const members = fewMembers(posterior);
  return spreadOf(posterior.run, posterior.varRun, (x) =>
    members.reduce((sum, { weight, pair }) => sum + weight * pair.runCdf(x), 0),
  );
}

/** Of what `hours` of running and a day together lose; with 0 hours: the loss lying. */
export function daySpread(posterior: Posterior, hours: number): Spread {
  const { run, rest, varRun, varRest, covRunRest } = posterior;
  const variance = hours * hours * varRun + 2 * hours * covRunRest + varRest;
  const members = fewMembers(posterior);
  return spreadOf(hours * run + rest, variance, (x) => dayCdfOf(members, hours, x));
}

function dayCdfOf(members: readonly Member[], hours: number, x: number): number {
  return members.reduce((sum, { weight, pair }) => sum + weight * dayCdf(pair, hours, x), 0);
}

/** Running hours since the level's moment that no meter tells of yet: mean and variance. */
export interface RunSince {
  readonly mean: number;
  readonly variance: number;
}

/** Of the level, once what was run since has gone by. */
export function levelSpread(posterior: Posterior, since: RunSince): Spread {
  const { level, run, varLevel, varRun, covLevelRun } = posterior;
  const gone = since.mean;
  const mean = level - gone * run;
  const variance =
    varLevel - 2 * gone * covLevelRun + gone * gone * varRun + since.variance * (varRun + run * run);
  return spreadOf(mean, variance, levelCdf(posterior, since));
}

/** Points over rest for each place over run, where what is not known of rest makes more than this part of the level's variance; else its normal shape is all there is to see. */
const POINTS = 6;
const SMALL_PART = 0.1;

function levelCdf(posterior: Posterior, since: RunSince): (x: number) => number {
  const [weights, means, sds]: [number[], number[], number[]] = [[], [], []];
  for (const { weight, pair } of fewMembers(posterior)) {
    const { sdLevel, levelOnRest, sdRest } = pair.shape;
    const byRest = levelOnRest * sdRest;
    const points = byRest * byRest > SMALL_PART * sdLevel * sdLevel ? POINTS : 1;
    const alone = points === 1 ? sdLevel * sdLevel + byRest * byRest : sdLevel * sdLevel;
    overPair(pair, points, (run, rest, share) => {
      weights.push(weight * share);
      means.push(pair.levelMean(run, rest) - run * since.mean);
      sds.push(Math.sqrt(alone + run * run * since.variance));
    });
  }
  return (x) => {
    let sum = 0;
    for (let i = 0; i < weights.length; i += 1) sum += weights[i]! * normalCdf((x - means[i]!) / sds[i]!);
    return sum;
  };
}

/** What weighs less is not to be seen in a quantile. */
const LIGHT = 1e-4;
/** Readings off the stick make hundreds of pairs: quantiles are read off so many of them, as likely as they are heavy, taken evenly along the level. */
const MANY = 24;

export function fewMembers({ members }: Posterior): readonly Member[] {
  if (members.length <= MANY) return members.filter(({ weight }) => weight > LIGHT);
  const sorted = members.toSorted((a, b) => a.pair.means.level - b.pair.means.level);
  const choose = chooserOf(sorted.map(({ weight }) => weight));
  return Array.from({ length: MANY }, (_, i) => ({
    pair: sorted[choose((i + 0.5) / MANY)]!.pair,
    weight: 1 / MANY,
  }));
}

function spreadOf(mean: number, variance: number, cdf: (x: number) => number): Spread {
  const sd = Math.sqrt(Math.max(0, variance));
  if (sd === 0) return { mean, sd: 0, p10: mean, p90: mean };
  const quantile = (p: number) => quantileOf(cdf, p, mean + sd * normalQuantile(p), sd);
  return { mean, sd, p10: quantile(TENTH), p90: quantile(1 - TENTH) };
}

/** Where a rising function reaches p, to a few thousandths of an sd: false position with the Illinois halving, between brackets doubled outwards from a guess. */
function quantileOf(cdf: (x: number) => number, p: number, guess: number, sd: number): number {
  let [low, high] = [guess - NEAR * sd, guess + NEAR * sd];
  let [atLow, atHigh] = [cdf(low) - p, cdf(high) - p];
  for (let step = NEAR * sd; atLow > 0; step *= 2) {
    [high, atHigh] = [low, atLow];
    low -= step;
    atLow = cdf(low) - p;
  }
  for (let step = NEAR * sd; atHigh < 0; step *= 2) {
    [low, atLow] = [high, atHigh];
    high += step;
    atHigh = cdf(high) - p;
  }
  let kept = 0;
  while (high - low > PRECISE * sd) {
    const slanted = (low * atHigh - high * atLow) / (atHigh - atLow);
    const middle = slanted > low && slanted < high ? slanted : (low + high) / 2;
    const at = cdf(middle) - p;
    if (Math.abs(at) < PRECISE * TENTH) return middle;
    if (at > 0) {
      [high, atHigh] = [middle, at];
      if (kept === 1) atLow /= 2;
      kept = 1;
    } else {
      [low, atLow] = [middle, at];
      if (kept === -1) atHigh /= 2;
      kept = -1;
    }
  }
  return (low + high) / 2;
}

const NEAR = 0.4;
const PRECISE = 2e-3;
