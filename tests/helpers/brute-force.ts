import type { Part, RatePriors } from '../../source/inference/rate-prior.ts';
import type { Moment, Reading } from '../../source/inference/readings.ts';
import { normalCdf } from '../../source/maths/normal.ts';
import { gaussLegendre } from '../../source/maths/quadrature.ts';

/** What a fluid's readings say, worked out the slow way: dense covariances, and integrals over run and rest laid on a plain grid. */
export interface BruteInput {
  readonly readings: readonly Reading[];
  readonly end: Moment;
  readonly priors: RatePriors;
  readonly vary: number;
  /** Sd of a level beforehand, and of one way of reading beside another, L. */
  readonly levelSd: (reading: Partial<Reading>) => number;
  readonly waySd: number;
}

export interface BruteAnswer {
  readonly run: Figure;
  readonly rest: Figure;
  readonly level: Figure;
  readonly leak: { tight: number; running: number; lying: number; both: number };
}

interface Figure {
  readonly mean: number;
  readonly sd: number;
}

const DAY = 86_400_000;
const NODES = 30;

export function bruteForce(input: BruteInput): BruteAnswer {
  const still = integrated(input, () => 0);
  if (input.vary === 0) return still;
  const { run, rest } = still;
  return integrated(
    input,
    (hours, days) => (input.vary * (run.mean * hours + rest.mean * days)) ** 2 / Math.max(1, days),
  );
}

type Matrix = number[][];

/** Readings and the level at the end, given run and rest: normal, mean linear in both. */
interface World {
  readonly base: number[];
  readonly hours: number[];
  readonly days: number[];
  readonly covariance: Matrix;
}

function worldOf(
  { readings, end, levelSd, waySd }: BruteInput,
  variation: (hours: number, days: number) => number,
): World {
  const all: (Moment & Partial<Reading>)[] = [...readings, end];
  const firstOf = (moment: Moment) => all.find(({ fill }) => fill === moment.fill)!;
  const walked = all.map((moment, i) => {
    let sum = 0;
    for (let j = 1; j <= i; j += 1) {
      if (all[j]!.fill !== moment.fill || all[j - 1]!.fill !== moment.fill) continue;
      sum += variation(all[j]!.runHours - all[j - 1]!.runHours, (all[j]!.at - all[j - 1]!.at) / DAY);
    }
    return sum;
  });
  return {
    base: all.map((moment) => {
      const first = firstOf(moment);
      return first.levelL! + moment.pouredL - first.pouredL;
    }),
    hours: all.map((moment) => moment.runHours - firstOf(moment).runHours),
    days: all.map((moment) => (moment.at - firstOf(moment).at) / DAY),
    covariance: all.map((a, i) =>
      all.map((b, j) => {
        let value = 0;
        if (a.fill === b.fill) value += levelSd(firstOf(a)) ** 2 + Math.min(walked[i]!, walked[j]!);
        if (a.way != null && a.way === b.way) value += waySd ** 2;
        if (i === j && a.sd !== undefined) value += a.sd ** 2;
        return value;
      }),
    ),
  };
}

/** Integrates over run and rest, kind of leak by kind of leak. */
function integrated(input: BruteInput, variation: (hours: number, days: number) => number): BruteAnswer {
  const world = worldOf(input, variation);
  const given = likelihood(input, world);
  const { run, rest } = input.priors;
  const kinds = {
    tight: [run.usual, rest.usual],
    running: [run.leak, rest.usual],
    lying: [run.usual, rest.leak],
    both: [run.leak, rest.leak],
  } as const;
  const sums = Object.entries(kinds).map(([kind, [a, b]]) => ({ kind, ...overRates(a, b, given, world) }));
  const top = Math.max(...sums.map(({ top: own }) => own));
  const total = new Array<number>(7).fill(0);
  const weights: Record<string, number> = {};
  for (const { kind, top: own, moments } of sums) {
    const scaled = moments.map((value) => value * Math.exp(own - top));
    weights[kind] = scaled[0]!;
    scaled.forEach((value, i) => {
      total[i]! += value;
    });
  }
  const mean = (i: number) => total[i]! / total[0]!;
  const figure = (i: number): Figure => ({ mean: mean(i), sd: Math.sqrt(mean(i + 3) - mean(i) ** 2) });
  const share = (kind: string) => weights[kind]! / total[0]!;
  return {
    run: figure(1),
    rest: figure(2),
    level: figure(3),
    leak: { tight: share('tight'), running: share('running'), lying: share('lying'), both: share('both') },
  };
}

/** ln of the chance of the readings, and mean and mean square of the level at the end. */
type Likelihood = (run: number, rest: number) => { log: number; level: number; square: number };

function likelihood({ readings }: BruteInput, world: World): Likelihood {
  const on = readings.flatMap(({ off }, i) => (off === 'on' ? [i] : []));
  const off = readings.flatMap((reading, i) => (reading.off === 'on' ? [] : [i]));
  const rest = [...off, readings.length];
  const pick = (rows: number[], columns: number[]) =>
    rows.map((i) => columns.map((j) => world.covariance[i]![j]!));
  const solver = inverse(pick(on, on));
  const gain = multiply(pick(rest, on), solver);
  const left = subtract(pick(rest, rest), multiply(gain, pick(on, rest)));
  const below = off.map((i) => readings[i]!.off === 'below');
  const ends = off.map((i) => readings[i]!.levelL);
  const fallingOff =
    left.length === 1 ? nothingOff(left) : left.length === 2 ? oneOff(left, below[0]!) : someOff(left, below);
  // Means are linear in both losses: worked out once for none, and for one of each alone.
  const meanAt = (run: number, perDay: number) => {
    const mean = world.base.map((base, i) => base - run * world.hours[i]! - perDay * world.days[i]!);
    const apart = on.map((i) => readings[i]!.levelL - mean[i]!);
    const expected = rest.map((i, k) => mean[i]! + apart.reduce((sum, a, j) => sum + gain[k]![j]! * a, 0));
    return { apart, expected };
  };
  const [zero, byHour, byDay] = [meanAt(0, 0), meanAt(1, 0), meanAt(0, 1)];
  const change = (of: 'apart' | 'expected', to: typeof zero) => to[of].map((x, i) => x - zero[of][i]!);
  const slopes = [change('apart', byHour), change('apart', byDay)] as const;
  const shifts = [change('expected', byHour), change('expected', byDay)] as const;
  const form = (a: number[], b: number[]) =>
    a.reduce((sum, x, i) => sum + x * b.reduce((s, y, j) => s + solver[i]![j]! * y, 0), 0);
  const [u, v] = slopes;
  const [cc, cu, cv, uu, uv, vv] = [
    form(zero.apart, zero.apart),
    form(zero.apart, u),
    form(zero.apart, v),
    form(u, u),
    form(u, v),
    form(v, v),
  ];
  return (r, d) => {
    const log = -0.5 * (cc + 2 * r * cu + 2 * d * cv + r * r * uu + 2 * r * d * uv + d * d * vv);
    const expected = zero.expected.map((x, i) => x + r * shifts[0][i]! + d * shifts[1][i]!);
    const { chance, level, square } = fallingOff(expected, ends);
    return { log: log + Math.log(chance), level, square };
  };
}

/** Several normals and, last, the level: the chance that the others fall off the stick as they did, and the level's mean and mean square given that. */
type FallingOff = (mean: number[], ends: number[]) => { chance: number; level: number; square: number };

function nothingOff(covariance: Matrix): FallingOff {
  return ([level]) => ({ chance: 1, level: level!, square: level! ** 2 + covariance[0]![0]! });
}

function oneOff(covariance: Matrix, below: boolean): FallingOff {
  const [[own, shared], [, last]] = covariance as [[number, number], [number, number]];
  const sd = Math.sqrt(own);
  return ([mean, level], [end]) => {
    const room = ((below ? 1 : -1) * (end! - mean!)) / sd;
    const chance = normalCdf(room);
    if (chance === 0) return { chance, level: 0, square: 0 };
    const hazard = density(room) / chance;
    const moved = level! + ((below ? -1 : 1) * shared * hazard) / sd;
    const left = last - (shared * shared * hazard * (hazard + room)) / own;
    return { chance, level: moved, square: moved * moved + left };
  };
}

/** By a grid over the level, which is cut in steps where a stick ends. Only where given the level nothing else joins them: no variation, one way of reading, one fill. */
function someOff(covariance: Matrix, below: boolean[]): FallingOff {
  const count = below.length;
  const own = covariance[count]![count]!;
  const sd = Math.sqrt(own);
  const slopes = below.map((_, i) => covariance[i]![count]! / own);
  const spreads = slopes.map((slope, i) => Math.sqrt(covariance[i]![i]! - slope * slope * own));
  for (let i = 0; i < count; i += 1)
    for (let j = 0; j < i; j += 1)
      if (Math.abs(covariance[i]![j]! - slopes[i]! * slopes[j]! * own) > 1e-6 * spreads[i]! * spreads[j]!)
        throw new Error('the slow way cannot tell these readings off the stick apart');
  const rule = gaussLegendre(12);
  return (mean, ends) => {
    const corners = ends.flatMap((end, i) => {
      const at = (end - mean[i]!) / (slopes[i]! * sd);
      const wide = spreads[i]! / Math.abs(slopes[i]! * sd);
      return [at - 6 * wide, at, at + 6 * wide];
    });
    const edges = [-WIDTH, ...corners.filter((x) => Math.abs(x) < WIDTH).sort((x, y) => x - y), WIDTH];
    let [chance, level, square] = [0, 0, 0];
    for (let piece = 1; piece < edges.length; piece += 1) {
      const [from, to] = [edges[piece - 1]!, edges[piece]!];
      for (let p = 0; p < rule.places.length; p += 1) {
        const deviate = from + ((to - from) * (1 + rule.places[p]!)) / 2;
        let weight = (rule.weights[p]! * (to - from) * density(deviate)) / 2;
        for (let i = 0; i < count; i += 1) {
          const room = ends[i]! - mean[i]! - slopes[i]! * sd * deviate;
          weight *= normalCdf(((below[i] ? 1 : -1) * room) / spreads[i]!);
        }
        const x = mean[count]! + sd * deviate;
        chance += weight;
        level += weight * x;
        square += weight * x * x;
      }
    }
    if (chance === 0) return { chance, level: 0, square: 0 };
    return { chance, level: level / chance, square: square / chance };
  };
}

const WIDTH = 8;

function density(x: number): number {
  return Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
}

/** Over one kind of leak. The grid is laid over the loss of a usual day and the share of it lost running, so that what hangs together lies along it. */
function overRates(run: Part, rest: Part, given: Likelihood, world: World) {
  const share = (part: Part) => Math.log(part.chance / normalCdf(part.mean / part.sd) / part.sd);
  const logPrior = (part: Part, rate: number) => -0.5 * ((rate - part.mean) / part.sd) ** 2 + share(part);
  const spanDays = Math.max(...world.days);
  const spanHours = Math.max(...world.hours);
  const together = spanDays > 0 ? spanHours / spanDays : 0;
  const hours = together * run.sd > 0.2 * rest.sd ? together : rest.sd / run.sd;
  const at = (day: number, part: number) => {
    const r = (part * day) / hours;
    const d = day * (1 - part);
    const { log, level, square } = given(r, d);
    const whole = log + logPrior(run, r) + logPrior(rest, d) + Math.log(day / hours);
    return { log: whole, values: [1, r, d, level, r * r, d * d, square] };
  };
  let box = { day: [0, hours * (run.mean + 9 * run.sd) + rest.mean + 9 * rest.sd], part: [0, 1] };
  for (let pass = 0; pass < 7; pass += 1) {
    const points = grid(box, pass < 6 ? 12 : NODES);
    const found = points.map(({ day, part }) => at(day, part).log);
    const best = Math.max(...found);
    if (!Number.isFinite(best))
      return { top: Number.NEGATIVE_INFINITY, moments: new Array<number>(7).fill(0) };
    const near = points.filter((_, i) => found[i]! > best - 22);
    const edge = (of: 'day' | 'part') => {
      const values = [...new Set(points.map((point) => point[of]))].sort((a, b) => a - b);
      const inside = near.map((point) => values.indexOf(point[of]));
      const [low, high] = [Math.min(...inside), Math.max(...inside)];
      return [values[low - 1] ?? box[of][0]!, values[high + 1] ?? box[of][1]!];
    };
    if (pass < 6) box = { day: edge('day'), part: edge('part') };
  }
  const points = grid(box, NODES);
  const values = points.map(({ day, part }) => at(day, part));
  const top = Math.max(...values.map(({ log }) => log));
  const moments = new Array<number>(7).fill(0);
  values.forEach(({ log, values: own }, i) => {
    const weight = points[i]!.weight * Math.exp(log - top);
    own.forEach((value, k) => {
      moments[k]! += weight * value;
    });
  });
  return { top, moments };
}

function grid(box: { day: number[]; part: number[] }, count: number) {
  const { places, weights } = gaussLegendre(count);
  const along = ([low, high]: number[]) =>
    Array.from(places, (place, i) => ({
      x: low! + ((high! - low!) * (1 + place)) / 2,
      weight: (weights[i]! * (high! - low!)) / 2,
    }));
  const parts = along(box.part);
  return along(box.day).flatMap((day) =>
    parts.map((part) => ({ day: day.x, part: part.x, weight: day.weight * part.weight })),
  );
}

function multiply(a: Matrix, b: Matrix): Matrix {
  const columns = b[0]?.length ?? 0;
  return a.map((row) =>
    Array.from({ length: columns }, (_, j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)),
  );
}

function subtract(a: Matrix, b: Matrix): Matrix {
  return a.map((row, i) => row.map((value, j) => value - (b[i]?.[j] ?? 0)));
}

/** By Gauss and Jordan, with pivots. */
function inverse(matrix: Matrix): Matrix {
  const size = matrix.length;
  const work = matrix.map((row, i) => [...row, ...matrix.map((_, j) => (i === j ? 1 : 0))]);
  for (let k = 0; k < size; k += 1) {
    let pivot = k;
    for (let i = k; i < size; i += 1) if (Math.abs(work[i]![k]!) > Math.abs(work[pivot]![k]!)) pivot = i;
    [work[k], work[pivot]] = [work[pivot]!, work[k]!];
    const by = work[k]![k]!;
    work[k] = work[k]!.map((value) => value / by);
    for (let i = 0; i < size; i += 1) {
      if (i === k) continue;
      const times = work[i]![k]!;
      work[i] = work[i]!.map((value, j) => value - times * work[k]![j]!);
    }
  }
  return work.map((row) => row.slice(size));
}
