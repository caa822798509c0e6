import type { Moment, Reading } from './readings.ts';

/** A level before the first reading of a stretch of readings. */
export interface Start extends Moment {
  readonly mean: number;
  readonly variance: number;
}

/**
 * Readings turned into rows of a fit whose errors are independent, of sd 1. Columns: `run` (L per weighted running hour), `rest` (L per day), then one an
 * offset in the order of `offsets`.
 */
export interface Rows {
  readonly columns: readonly Float64Array[];
  readonly target: Float64Array;
  /** Sum of the logs of what the rows were multiplied by. */
  readonly logScale: number;
  /** The level at the end moment: `target` + the sum of `coefficients` times the unknowns, with that variance of its own. */
  readonly end: { readonly target: number; readonly coefficients: Float64Array; readonly variance: number };
}

export interface Offset {
  readonly index: number;
  readonly sign: 1 | -1;
}

export interface WhiteningInput {
  readonly readings: readonly Reading[];
  /** Null: nothing is known of the level before the first reading. */
  readonly start: Start | null;
  readonly end: Moment;
  /** Which offsets each reading carries, added or taken off. */
  readonly offsetsOn: (reading: number) => readonly Offset[];
  readonly offsets: number;
  /** Variance of the loss between two moments about its mean, L². */
  readonly variation: (hours: number, days: number) => number;
  /** How far beforehand a level strays from the first reading of it, L. */
  readonly levelSd: (reading: Reading) => number;
  /** The level a fill begins with where no reading says, and how far it strays, L. */
  readonly fill: { readonly levelL: number; readonly sd: number };
}

const MS_A_DAY = 86_400_000;

/**
 * The level between readings is a random walk (what is lost varies), its drift linear in the unknowns; a reading is the level with an error of its own. So a scalar
 * Kalman filter, whose gains do not depend on the data, run at once over the target and every column gives rows with independent errors in
 * one pass, instead of an n by n covariance. (Any text on state-space models, "diffuse regression by the filter"; from memory.)
 */
export function whiten(input: WhiteningInput): Rows {
  const { readings, offsets, levelSd } = input;
  const width = 2 + offsets;
  const columns = Array.from({ length: width }, () => new Float64Array(readings.length));
  const target = new Float64Array(readings.length);
  const level = new Level(width, input);
  readings.forEach((reading, i) => {
    if (!level.reaches(reading)) level.begin(reading, reading.levelL, levelSd(reading) ** 2);
    level.observe(reading, input.offsetsOn(i), i, columns, target);
  });
  if (!level.reaches(input.end)) level.begin(input.end, input.fill.levelL, input.fill.sd ** 2);
  return {
    columns,
    target,
    logScale: level.logScale,
    end: { target: level.target, coefficients: level.coefficients, variance: level.variance },
  };
}

/** The level as known from the readings so far: linear in the unknowns. */
class Level {
  target = 0;
  variance = 0;
  logScale = 0;
  readonly coefficients: Float64Array;
  private readonly input: WhiteningInput;
  private last: Moment | null = null;

  constructor(width: number, input: WhiteningInput) {
    this.input = input;
    this.coefficients = new Float64Array(width);
    if (input.start !== null) this.begin(input.start, input.start.mean, input.start.variance);
  }

  begin(moment: Moment, mean: number, variance: number): void {
    this.last = moment;
    this.target = mean;
    this.variance = variance;
    this.coefficients.fill(0);
  }

  /** Goes on to a moment; false where nothing known before reaches it: none yet, or drained since. */
  reaches(moment: Moment): boolean {
    if (this.last === null || this.last.fill !== moment.fill) return false;
    const hours = moment.runHours - this.last.runHours;
    const days = (moment.at - this.last.at) / MS_A_DAY;
    this.target += moment.pouredL - this.last.pouredL;
    this.coefficients[0]! -= hours;
    this.coefficients[1]! -= days;
    this.variance += this.input.variation(hours, days);
    this.last = moment;
    return true;
  }

  observe(
    reading: Reading,
    offsets: readonly Offset[],
    row: number,
    columns: readonly Float64Array[],
    target: Float64Array,
  ): void {
    const { coefficients } = this;
    const total = this.variance + reading.sd * reading.sd;
    const scale = 1 / Math.sqrt(total);
    const gain = this.variance / total;
    const apart = reading.levelL - this.target;
    target[row] = apart * scale;
    this.logScale += Math.log(scale);
    this.target += gain * apart;
    for (let j = 0; j < coefficients.length; j += 1) {
      columns[j]![row] = coefficients[j]! * scale;
      coefficients[j]! *= 1 - gain;
    }
    for (const { index, sign } of offsets) {
      columns[2 + index]![row]! += sign * scale;
      coefficients[2 + index]! -= gain * sign;
    }
    this.variance *= 1 - gain;
  }
}
