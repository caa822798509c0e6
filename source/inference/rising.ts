import type { Gaussian } from './gaussian.ts';
import type { Changed } from './history.ts';
import { REST, RUN } from './joint.ts';
import type { ReadPeriod } from './period.ts';
import { posteriorOf } from './posterior.ts';
import { type RatePriors, type TwoParts, usualPriors } from './rate-prior.ts';

/** Before any reading, the chance that something gets in. Judgement, no source: half as likely as a leak. */
const RISE_CHANCE = 0.05;

/**
 * The chance that a level rose with nothing poured in: either it goes up by the hour or by the day, its losses turned round (as wide as a leak), or it stepped up where the
 * losses changed. Each is weighed against losses alone by how well it foretold the readings.
 */
export function riseChance(present: ReadPeriod, stepped: Changed | null): number {
  const { fluid, joint, priors, vague } = present;
  const usual = usualPriors(fluid, 0);
  const ways: { which: typeof RUN | typeof REST; priors: RatePriors }[] = [
    { which: REST, priors: { run: priors.run, rest: gain(usual.rest) } },
  ];
  if (fluid.engine !== undefined)
    ways.push({ which: RUN, priors: { run: gain(usual.run), rest: priors.rest } });
  const against = present.posterior.logEvidence;
  const odds = ways.reduce(
    (sum, { which, priors: turned }) =>
      sum +
      Math.exp(posteriorOf(turnedRound(joint, which), turned, vague, 'rough').logEvidence - against) /
        ways.length,
    0,
  );
  const atOnce = stepped?.way === 'up' ? stepOdds(present, stepped) : 0;
  const rise = (RISE_CHANCE / (1 - RISE_CHANCE)) * Math.max(odds, atOnce);
  return rise === Infinity ? 1 : rise / (1 + rise);
}

function gain({ leak }: TwoParts): TwoParts {
  return { usual: { chance: 0, mean: 0, sd: leak.sd }, leak: { chance: 1, mean: 0, sd: leak.sd } };
}

/** One loss as a gain. */
function turnedRound({ mean, covariance }: Gaussian, which: number): Gaussian {
  const sign = (j: number) => (j === which ? -1 : 1);
  return {
    mean: mean.map((value, j) => sign(j) * value),
    covariance: covariance.map((row, i) => row.map((value, j) => sign(i) * sign(j) * value)),
  };
}

/** Odds of a step up, as far as from low to full, against chance, at the first reading after a change. */
function stepOdds({ fluid, readings }: ReadPeriod, { before }: Changed): number {
  const first = readings[0];
  if (first === undefined || first.off !== 'on' || first.fill !== before.end.fill) return 0;
  const { level, varLevel } = before.posterior;
  const apart = first.levelL - level - (first.pouredL - before.end.pouredL);
  if (apart <= 0) return 0;
  const narrow = varLevel + first.sd ** 2;
  const wide = narrow + (fluid.full - fluid.low) ** 2;
  return 2 * Math.sqrt(narrow / wide) * Math.exp(0.5 * apart * apart * (1 / narrow - 1 / wide));
}
