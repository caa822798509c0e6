import type { Fluid } from '../boat/fluid.ts';
import { logNormalCdf } from '../maths/normal.ts';

/** One of the two ways a loss may be: a normal truncated at zero, with its chance. L an hour, or L a day. */
export interface Part {
  readonly chance: number;
  readonly mean: number;
  readonly sd: number;
}

/** What is thought of a fluid's two losses before any reading (model 3.2): each usual, or a leak. */
export interface RatePriors {
  readonly run: TwoParts;
  readonly rest: TwoParts;
}

export interface TwoParts {
  readonly usual: Part;
  readonly leak: Part;
}

/** Without a word in the boat file, as parts of low to full (model 3.2): an engine hour's and a day's. */
const USUAL_SD = { run: 1 / 200, rest: 1 / 100 };
const WIDE_SD = { run: 1 / 20, rest: 1 / 10 };
/** A leak strays at least this many times as far as the usual loss: model 3.2. */
const LEAST_WIDER = 3;
/** A rate said to be known exactly is known to this part of low to full: sums then need no special case. */
const EXACTLY = 1e-5;
/** After work a rate is half normal with this times what it was (model 3.4): half the chance lies below what it was. */
const AFTER_WORK = 1.5;

/** The losses of the boat file. A fluid with no engine loses nothing by the hour. */
export function usualPriors(fluid: Fluid, leakChance: number): RatePriors {
  const run = fluid.engine === undefined ? nothing : twoParts(fluid, 'run', leakChance);
  return { run, rest: twoParts(fluid, 'rest', leakChance) };
}

/** New rates after work or a change, from the mean each had before. `leakChance` is the chance that the new one is a leak that has nothing to do with the old one. */
export function priorsAfter(
  fluid: Fluid,
  before: { readonly run: number; readonly rest: number },
  leakChance: number,
): RatePriors {
  const usual = usualPriors(fluid, leakChance);
  const least = (fluid.full - fluid.low) * EXACTLY;
  const anew = (mean: number, leak: Part): TwoParts => ({
    usual: { chance: 1 - leak.chance, mean: 0, sd: Math.max(AFTER_WORK * mean, least) },
    leak,
  });
  const run = fluid.engine === undefined ? nothing : anew(before.run, usual.run.leak);
  return { run, rest: anew(before.rest, usual.rest.leak) };
}

/** Tells the chance that a loss of a given size is a leak and not the usual one, by these two parts. */
export function leakTeller({ usual, leak }: TwoParts): (rate: number) => number {
  if (leak.chance === 0) return () => 0;
  if (usual.chance === 0) return () => 1;
  const logOdds = logHeight(leak) - logHeight(usual);
  return (rate) => {
    const usualZ = (rate - usual.mean) / usual.sd;
    const leakZ = (rate - leak.mean) / leak.sd;
    return 1 / (1 + Math.exp(0.5 * (leakZ * leakZ - usualZ * usualZ) - logOdds));
  };
}

const nothing: TwoParts = {
  usual: { chance: 1, mean: 0, sd: 0 },
  leak: { chance: 0, mean: 0, sd: 0 },
};

function twoParts(fluid: Fluid, by: 'run' | 'rest', leakChance: number): TwoParts {
  const marks = fluid.full - fluid.low;
  const told = by === 'run' ? fluid.loss.perEngineHour : fluid.loss.perDay;
  const mean = told?.mean ?? 0;
  const sd = Math.max(told?.sd ?? marks * USUAL_SD[by], marks * EXACTLY);
  const wide = Math.max(told?.wide ?? marks * WIDE_SD[by], LEAST_WIDER * sd);
  return { usual: { chance: 1 - leakChance, mean, sd }, leak: { chance: leakChance, mean, sd: wide } };
}

/** ln of chance times density of a part truncated at zero, but for its bell and what all parts share. */
function logHeight({ chance, mean, sd }: Part): number {
  return Math.log(chance / sd) - logNormalCdf(mean / sd);
}
