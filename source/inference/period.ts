import type { Fluid } from '../boat/fluid.ts';
import { mostIn } from '../condition/level.ts';
import type { Gaussian } from './gaussian.ts';
import { MOST_SHORTFALLS } from './imagined.ts';
import { type Fitted, fitRows, type OffsetPrior } from './joint.ts';
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
  readonly waysAfter: ReadonlyMap<string, OffsetPrior>;
}

/** Beforehand a level of which one reading is known strays so far from it, in times low to full: model 3.2. */
const LEVEL_STRAYS = 10;
/** How far one way of reading may lie from another, as a part of low to full. Judgement, no source. */
const WAY_STRAYS = 1 / 2;
/** The prior the rows are fitted with is so many times wider than any the fluid has: wide enough to say nothing, not so wide that digits are lost. */
const VAGUER = 10;

/** The readings as rows. How much losses vary goes by their size, which a first fit tells, as if they did not vary (model 3.1). */
export function whitenPeriod(period: Period): WhitenedPeriod {
  const { fluid, priors } = period;
  const readings = fewOffTheStick(period.readings);
  const offsets = offsetsOf(period, readings);
  const vague = VAGUER * widest(priors);
  const rowsWith = (variation: (hours: number, days: number) => number): WhitenedPeriod => ({
    ...period,
    readings,
    rows: whiten({
      ...period,
      ...offsets,
      readings,
      variation,
      levelSd: (reading) => levelSdOf(fluid, reading),
      fill: { levelL: fluid.full, sd: LEVEL_STRAYS * (fluid.full - fluid.low) },
    }),
    vague,
    wayNames: offsets.names,
    wayPriors: offsets.priors,
  });
  const still = rowsWith(() => 0);
  if (fluid.vary === 0) return still;
  return rowsWith(variationOf(fluid, posteriorOf(fitted(still).joint, priors, vague, 'rough')));
}

export function readPeriod(period: Period): ReadPeriod {
  const whitened = whitenPeriod(period);
  const { joint, ways } = fitted(whitened);
  const waysAfter = new Map(period.ways);
  for (const [i, name] of whitened.wayNames.entries()) waysAfter.set(name, ways[i]!);
  const posterior = posteriorOf(joint, period.priors, whitened.vague, 'fine');
  return { ...whitened, joint, posterior, waysAfter };
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
function offsetsOf({ fluid, ways }: Period, readings: readonly Reading[]) {
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
    priors: names.map((name) => ways.get(name) ?? usual),
    offsets,
    offsetsOn: (i: number) => carried[i]!,
  };
}

const none: readonly Offset[] = [];

/** Of more readings off the stick than are looked at together, the newest. */
function fewOffTheStick(readings: readonly Reading[]): readonly Reading[] {
  const off = readings.filter((reading) => reading.off !== 'on');
  if (off.length <= MOST_SHORTFALLS) return readings;
  const old = new Set(off.slice(0, -MOST_SHORTFALLS));
  return readings.filter((reading) => !old.has(reading));
}
