import { normalCdf } from '../maths/normal.ts';
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

/** Points over rest for each place over run. */
const POINTS = 6;

/** Of the level, once what was run since has gone by. */
export function levelSpread(posterior: Posterior, since: RunSince): Spread {
  const points: { readonly weight: number; readonly mean: number; readonly sd: number }[] = [];
  let [mean, square] = [0, 0];
  for (const { weight, pair } of fewMembers(posterior)) {
    overPair(pair, POINTS, (run, rest, share) => {
      const expected = pair.levelMean(run, rest) - run * since.mean - posterior.level;
      const variance = pair.shape.sdLevel ** 2 + run * run * since.variance;
      points.push({ weight: weight * share, mean: expected, sd: Math.sqrt(variance) });
      mean += weight * share * expected;
      square += weight * share * (expected * expected + variance);
    });
  }
  const spread = spreadOf(mean, square - mean * mean, (x) =>
    points.reduce((sum, point) => sum + point.weight * normalCdf((x - point.mean) / point.sd), 0),
  );
  const { level } = posterior;
  return { mean: spread.mean + level, sd: spread.sd, p10: spread.p10 + level, p90: spread.p90 + level };
}

/** Readings off the stick make hundreds of pairs: quantiles are read off so many of them, as likely as they are heavy, taken evenly along the level. */
const MANY = 24;

export function fewMembers({ members }: Posterior): readonly Member[] {
  if (members.length <= MANY) return members;
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
  return { mean, sd, p10: quantileOf(cdf, TENTH, mean, sd), p90: quantileOf(cdf, 1 - TENTH, mean, sd) };
}

/** Where a rising function reaches p, to a thousandth of an sd: false position with the Illinois halving, between brackets doubled outwards. */
function quantileOf(cdf: (x: number) => number, p: number, mean: number, sd: number): number {
  let [low, high] = [mean - 2 * sd, mean + 2 * sd];
  for (let i = 0; i < 60 && cdf(low) > p; i += 1) low -= mean - low;
  for (let i = 0; i < 60 && cdf(high) < p; i += 1) high += high - mean;
  let [atLow, atHigh] = [cdf(low) - p, cdf(high) - p];
  let kept = 0;
  for (let i = 0; i < 100 && high - low > PRECISE * sd; i += 1) {
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

const PRECISE = 1e-3;
