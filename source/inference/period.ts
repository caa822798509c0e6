import type { Fluid } from '../boat/fluid.ts';
import { mostIn } from '../condition/level.ts';
import { positivePart } from '../maths/positive-normal.ts';
import type { Gaussian } from './gaussian.ts';
import { type Fitted, fitRows, type OffsetPrior, REST, RUN, SHORTFALLS, withPart } from './joint.ts';
import { type Posterior, posteriorOf } from './posterior.ts';
import type { RatePriors } from './rate-prior.ts';
import type { Moment, Reading } from './readings.ts';
import { type Offset, type Rows, type Start, whiten } from './whiten.ts';

/** A time in which a fluid's two losses stay the same: its readings, and what was known when it began. */
export interface Period {
  readonly fluid: Fluid;
  readonly priors: RatePriors;
  /** The level when it began; null: nothing known. */
  readonly start: Start | null;
  readonly readings: readonly Reading[];
  readonly end: Moment;
  /** What is known of other ways of reading. */
  readonly ways: ReadonlyMap<string, OffsetPrior>;
}

/** A period with its readings made rows of a fit. */
export interface WhitenedPeriod extends Period {
  readonly rows: Rows;
  /** Sd of the prior the rows are fitted with. */
  readonly vague: number;
  /** The other ways of reading in it, and what was known of each. */
  readonly wayNames: readonly string[];
  readonly wayPriors: readonly OffsetPrior[];
}

/** A period with what its readings say. */
export interface ReadPeriod extends WhitenedPeriod {
  /** Before truncation, with the vague prior. */
  readonly joint: Gaussian;
  readonly posterior: Posterior;
  /** ln of the density its priors gave the readings. */
  readonly logEvidence: number;
  readonly waysAfter: ReadonlyMap<string, OffsetPrior>;
}

/** Beforehand a level of which one reading is known strays so far from it, in times low to full: model 3.2. */
const LEVEL_STRAYS = 10;
/** How far one way of reading may lie from another, as a part of low to full. Judgement, no source. */
const WAY_STRAYS = 1 / 2;
/** The prior the rows are fitted with is so many times wider than any the fluid has: wide enough to say nothing, not so wide that digits are lost. */
const VAGUER = 10;

/** The readings as rows. How much losses vary goes by their size, which a first fit tells, as if they did not vary (model 3.1). */
export function whitenPeriod(told: Period): WhitenedPeriod {
  const period = { ...told, readings: fewOffTheStick(told) };
  const still = rowsOf(period, () => 0);
  if (period.fluid.vary === 0) return still;
  const size = posteriorOf(fitted(still).joint, period.priors, still.vague, 'rough');
  return rowsOf(period, variationOf(period.fluid, size));
}

export function readPeriod(period: Period): ReadPeriod {
  const whitened = whitenPeriod(period);
  const { joint, ways, logEvidence } = fitted(whitened);
  const waysAfter = new Map(period.ways);
  for (const [i, name] of whitened.wayNames.entries()) waysAfter.set(name, ways[i]!);
  const posterior = posteriorOf(joint, period.priors, whitened.vague, 'fine');
  return { ...whitened, joint, posterior, logEvidence: logEvidence + posterior.logEvidence, waysAfter };
}

function rowsOf(period: Period, variation: (hours: number, days: number) => number): WhitenedPeriod {
  const { fluid, priors } = period;
  const { names, wayPriors, ...offsets } = offsetsOf(period);
  const levelSd = (reading: Reading) => levelSdOf(fluid, reading);
  const fill = { levelL: fluid.full, sd: LEVEL_STRAYS * (fluid.full - fluid.low) };
  const rows = whiten({ ...period, ...offsets, variation, levelSd, fill });
  return { ...period, rows, vague: VAGUER * widest(priors), wayNames: names, wayPriors };
}

function fitted({ rows, wayPriors, vague, fluid }: WhitenedPeriod): Fitted {
  return fitRows(rows, wayPriors, vague, fluid.engine !== undefined);
}

/** How far a level strays beforehand from the first reading of it. Off the stick it lies between there and empty, or the most it can hold: twice the sd. */
export function levelSdOf(fluid: Fluid, { off, sd }: Pick<Reading, 'off' | 'sd'>): number {
  if (off === 'on') return LEVEL_STRAYS * (fluid.full - fluid.low);
  return Math.max(sd, (off === 'below' ? fluid.low : mostIn(fluid) - fluid.full) / 2);
}

/** How much the loss between two moments varies, L²: a part of its expected size on each day, days apart from one another. Within a day it is one day's. */
export function variationOf(
  { vary }: Fluid,
  { run, rest }: { readonly run: number; readonly rest: number },
): (hours: number, days: number) => number {
  return (hours, days) => (vary * (run * hours + rest * days)) ** 2 / Math.max(1, days);
}

function widest({ run, rest }: RatePriors): number {
  return Math.max(...[run.usual, run.leak, rest.usual, rest.leak].map(({ mean, sd }) => mean + sd));
}

/** Offsets: one a way of reading not the usual one, then one a reading off the stick: its shortfall. */
function offsetsOf({ fluid, ways, readings }: Period) {
  const names = [...new Set(readings.flatMap(({ way }) => (way === null ? [] : [way])))].sort();
  const usual = { mean: 0, sd: (fluid.full - fluid.low) * WAY_STRAYS };
  let offsets = names.length;
  const carried = readings.map(({ way, off }): readonly Offset[] => {
    if (way === null && off === 'on') return none;
    const own: Offset[] = way === null ? [] : [{ index: names.indexOf(way), sign: 1 }];
    if (off !== 'on') own.push({ index: offsets++, sign: off === 'below' ? 1 : -1 });
    return own;
  });
  return {
    names,
    wayPriors: names.map((name) => ways.get(name) ?? usual),
    offsets,
    offsetsOn: (i: number) => carried[i]!,
  };
}

const none: readonly Offset[] = [];

/** So many readings off the stick are taken for just what they are; of more, the older ones are taken as the nearest normal readings, so many at a time. */
const MOST_OFF = 8;
const AT_A_TIME = 24;

/** A period's readings with all that fell off the stick taken as the nearest normal ones. */
export function onTheStick(period: Period): readonly Reading[] {
  if (period.readings.every(({ off }) => off === 'on')) return period.readings;
  const near = nearestNormal(period);
  return period.readings.map((reading) => near.get(reading) ?? reading);
}

function fewOffTheStick(period: Period): readonly Reading[] {
  let { readings } = period;
  let off = readings.filter((reading) => reading.off !== 'on');
  while (off.length > MOST_OFF) {
    const old = new Set(off.slice(0, Math.min(AT_A_TIME, off.length - MOST_OFF)));
    const among = { ...period, readings: readings.filter((one) => one.off === 'on' || old.has(one)) };
    const near = nearestNormal(among);
    readings = readings.map((reading) => near.get(reading) ?? reading);
    off = off.slice(old.size);
  }
  return readings;
}

/** Each reading off the stick as an ordinary one that says as nearly the same: it leaves the level read with the mean and variance that falling off the stick leaves it with (one step of expectation propagation; T. P. Minka, 2001). */
function nearestNormal(period: Period): ReadonlyMap<Reading, Reading> {
  const still = rowsOf(period, () => 0);
  const [run, rest] = fitted(still).joint.mean;
  const size = { run: Math.max(0, run!), rest: Math.max(0, rest!) };
  const whitened = rowsOf(period, variationOf(period.fluid, size));
  const { mean, covariance } = withWidest(fitted(whitened).joint, whitened);
  const off = period.readings.filter((reading) => reading.off !== 'on');
  return new Map(
    off.map((reading, k) => {
      const [expected, variance] = [mean[SHORTFALLS + k]!, covariance[SHORTFALLS + k]![SHORTFALLS + k]!];
      const left = positivePart(expected, Math.sqrt(variance));
      const precision = Math.max(1 / left.variance - 1 / variance, NOTHING_NEW / variance);
      const shortfall = (left.mean / left.variance - expected / variance) / precision;
      const levelL = reading.levelL + (reading.off === 'below' ? -shortfall : shortfall);
      return [reading, { ...reading, off: 'on', levelL, sd: Math.hypot(reading.sd, precision ** -0.5) }];
    }),
  );
}

const NOTHING_NEW = 1e-6;

function withWidest(joint: Gaussian, { priors, vague }: WhitenedPeriod): Gaussian {
  const run = withPart(joint, RUN, priors.run.leak, vague).joint;
  return withPart(run, REST, priors.rest.leak, vague).joint;
}
