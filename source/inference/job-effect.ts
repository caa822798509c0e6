import { normalQuantile } from '../maths/normal-quantile.ts';
import type { JobEffect } from './belief.ts';
import { overPair } from './pair.ts';
import type { ReadPeriod } from './period.ts';
import { variationOf } from './period.ts';
import type { Posterior } from './posterior.ts';
import type { Job } from './readings.ts';
import { fewMembers } from './spreads.ts';

/** Settled: 9 in 10 either way (model 3.4), and the normal deviate of that. */
const SETTLED = 0.9;
const SETTLED_DEVIATE = normalQuantile(SETTLED);
/** Looked no further ahead than this many days of readings. */
const MOST_DAYS = 365;

/** Whether work helped: the loss on a usual day, of so many running hours, after against before. */
export function effectOf(job: Job, before: ReadPeriod, after: ReadPeriod, hours: number): JobEffect {
  const [old, anew] = [dayLosses(before.posterior, hours), dayLosses(after.posterior, hours)];
  const lowerChance = chanceLower(anew, old);
  return {
    at: job.at,
    text: job.text,
    lowerChance,
    ratio: ratioOf(middlesOf(anew), middlesOf(old)),
    daysToSettle:
      Math.max(lowerChance, 1 - lowerChance) >= SETTLED ? 0 : daysToSettle(before.posterior, after, hours),
  };
}

/** A distribution as points, sorted, with weights that add up to 1. */
interface Weighted {
  readonly values: Float64Array;
  readonly weights: Float64Array;
}

/** Points over the loss lying for each place over the loss running. */
const POINTS = 6;

function dayLosses(posterior: Posterior, hours: number): Weighted {
  const points: { readonly value: number; readonly weight: number }[] = [];
  for (const { pair, weight } of fewMembers(posterior))
    overPair(pair, POINTS, (run, rest, share) => {
      points.push({ value: hours * run + rest, weight: weight * share });
    });
  points.sort((a, b) => a.value - b.value);
  const total = points.reduce((sum, { weight }) => sum + weight, 0);
  return {
    values: Float64Array.from(points, ({ value }) => value),
    weights: Float64Array.from(points, ({ weight }) => weight / total),
  };
}

/** The chance that one of the first lies below one of the second. */
function chanceLower(first: Weighted, second: Weighted): number {
  let [chance, below, i] = [0, 0, 0];
  second.values.forEach((value, j) => {
    while (i < first.values.length && first.values[i]! < value) below += first.weights[i++]!;
    chance += second.weights[j]! * below;
  });
  return chance;
}

const MIDDLES = 64;

/** The middles of so many equal shares. */
function middlesOf({ values, weights }: Weighted): Float64Array {
  let [i, below] = [0, 0];
  return Float64Array.from({ length: MIDDLES }, (_, k) => {
    const share = (k + 0.5) / MIDDLES;
    while (i < values.length - 1 && below + weights[i]! < share) below += weights[i++]!;
    return values[i]!;
  });
}

function ratioOf(anew: Float64Array, old: Float64Array): JobEffect['ratio'] {
  const ratios = new Float64Array(MIDDLES * MIDDLES);
  anew.forEach((a, i) => {
    old.forEach((b, j) => {
      ratios[i * MIDDLES + j] = a / Math.max(b, Number.MIN_VALUE);
    });
  });
  ratios.sort();
  const at = (share: number) => Math.min(Number.MAX_VALUE, ratios[Math.floor(share * ratios.length)]!);
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

/**
 * How many more days with a reading each, of usual hours, until the difference of the means would be known well enough, were it to stay as it is. Null where no number of them within a
 * year would do: it is too small beside the doubt about what was before.
 */
function daysToSettle(
  before: Posterior,
  { fluid, rows, posterior, readings }: ReadPeriod,
  hours: number,
): number | null {
  const apart = hours * (posterior.run - before.run) + posterior.rest - before.rest;
  const wanted = (apart / SETTLED_DEVIATE) ** 2 - dayVariance(before, hours);
  if (wanted <= 0) return null;
  const known = {
    varRun: posterior.varRun,
    varRest: posterior.varRest,
    covRunRest: posterior.covRunRest,
  };
  const varies = variationOf(fluid, posterior)(hours, 1);
  const error = (readings.at(-1)?.sd ?? (fluid.full - fluid.low) / 20) ** 2;
  let { variance } = rows.end;
  let [onRun, onRest] = rows.end.coefficients as unknown as [number, number];
  for (let day = 1; day <= MOST_DAYS; day += 1) {
    variance += varies;
    onRun -= hours;
    onRest -= 1;
    const total = variance + error;
    seeRow(known, onRun, onRest, total);
    const gain = variance / total;
    onRun *= 1 - gain;
    onRest *= 1 - gain;
    variance *= 1 - gain;
    if (dayVariance(known, hours) <= wanted) return day;
  }
  return null;
}

type Doubt = { varRun: number; varRest: number; covRunRest: number };

/** What a reading of a * run + b * rest, with that variance of its own, leaves in doubt. */
function seeRow(doubt: Doubt, a: number, b: number, variance: number): void {
  const alongRun = a * doubt.varRun + b * doubt.covRunRest;
  const alongRest = a * doubt.covRunRest + b * doubt.varRest;
  const total = variance + a * alongRun + b * alongRest;
  doubt.varRun -= (alongRun * alongRun) / total;
  doubt.varRest -= (alongRest * alongRest) / total;
  doubt.covRunRest -= (alongRun * alongRest) / total;
}

function dayVariance({ varRun, varRest, covRunRest }: Readonly<Doubt>, hours: number): number {
  return hours * hours * varRun + 2 * hours * covRunRest + varRest;
}
