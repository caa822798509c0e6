import type { Fluid } from '../boat/fluid.ts';
import { mostIn } from '../condition/level.ts';
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

/** A period with what its readings say. */
export interface ReadPeriod extends Period {
  readonly posterior: Posterior;
  readonly rows: Rows;
  readonly vague: number;
  readonly wayPriors: readonly OffsetPrior[];
  readonly waysAfter: ReadonlyMap<string, OffsetPrior>;
}

/** Beforehand a level of which one reading is known strays so far from it, in times low to full: model 3.2. */
const LEVEL_STRAYS = 10;
/** How far one way of reading may lie from another, as a part of low to full. Judgement, no source. */
const WAY_STRAYS = 1 / 2;
/** The prior the rows are fitted with is so many times wider than any the fluid has: wide enough to say nothing, not so wide that digits are lost. */
const VAGUER = 10;
/** Points laid over several readings off the stick: for the figures, and for the first fit, which only says how much losses vary. */
const FINE = 512;
const ROUGH = 128;

/** Two fits (model 3.1): the first, as if losses did not vary, gives the size of the losses and so how much they vary; the second counts it in. */
export function readPeriod(period: Period): ReadPeriod {
  const { fluid, priors } = period;
  const vague = VAGUER * widest(priors);
  const readings = fewOffTheStick(period.readings);
  const offsets = offsetsOf(period, readings);
  const rowsWith = (variation: (hours: number, days: number) => number) =>
    whiten({
      ...period,
      ...offsets,
      readings,
      variation,
      levelSd: (reading) => levelSdOf(fluid, reading),
      fill: { levelL: fluid.full, sd: LEVEL_STRAYS * (fluid.full - fluid.low) },
    });
  const fitted = (rows: Rows) => fitRows(rows, offsets.priors, vague, fluid.engine !== undefined);
  const read = (rows: Rows, points: number): { fit: Fitted; posterior: Posterior } => {
    const fit = fitted(rows);
    return { fit, posterior: posteriorOf(fit.joint, priors, vague, points) };
  };
  const still = rowsWith(() => 0);
  const first = read(still, fluid.vary === 0 ? FINE : ROUGH);
  const rows = fluid.vary === 0 ? still : rowsWith(variationOf(fluid, first.posterior));
  const { fit, posterior } = fluid.vary === 0 ? first : read(rows, FINE);
  const waysAfter = new Map(period.ways);
  for (const [i, name] of offsets.names.entries()) waysAfter.set(name, fit.ways[i]!);
  return { ...period, readings, posterior, rows, vague, wayPriors: offsets.priors, waysAfter };
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
