import { MS_A_DAY } from '../condition/time.ts';
import { normalQuantile } from '../maths/normal-quantile.ts';
import type { LevelPoint } from './belief.ts';
import { levelSdOf, onTheStick, type ReadPeriod, variationOf } from './period.ts';
import type { Moment, Pour, Reading } from './readings.ts';

const NINE_TENTHS = normalQuantile(0.9);
/** Between readings further apart than this the line gets a point a day: its doubt swells there. */
const GAP_DAYS = 2;

/**
 * The level from an instant on, as all readings of its period together tell it: at each reading, before and after each top-up, and on the days of a gap. Given the losses it is what a smoother makes of
 * readings of a walk (H. E. Rauch, F. Tung and C. T. Striebel, AIAA J. 3 (1965), 1445-1450, for one state); what is not known of the losses then adds its part. Ranges are
 * those of a normal.
 */
export function levelLine(
  period: ReadPeriod,
  pours: readonly Pour[],
  runHoursAt: (at: number) => number,
  from: number,
): readonly LevelPoint[] {
  const told = stopsOf(period, pours, runHoursAt, from);
  const smoothed = smooth(filtered(told, period, from));
  const { run, rest, varRun, varRest, covRunRest } = period.posterior;
  return smoothed.flatMap(({ moment, level }, i) => {
    const next = smoothed[i + 1]?.moment;
    if (next && next.at === moment.at && next.pouredL === moment.pouredL && next.fill === moment.fill)
      return [];
    const mean = level.mean + level.run * run + level.rest * rest;
    const variance =
      level.variance +
      level.run ** 2 * varRun +
      2 * level.run * level.rest * covRunRest +
      level.rest ** 2 * varRest;
    const apart = NINE_TENTHS * Math.sqrt(Math.max(0, variance));
    return [{ at: moment.at, mean, p10: mean - apart, p90: mean + apart }];
  });
}

/** A moment the line goes through; how much the loss since the one before varies, L². */
interface Stop {
  readonly moment: Moment;
  readonly reading: Reading | null;
  readonly variance: number;
}

/** The start, every reading and the end, with the top-ups and the days of gaps between them. What varies between two readings is shared out by how much is lost. */
function stopsOf(
  period: ReadPeriod,
  pours: readonly Pour[],
  runHoursAt: (at: number) => number,
  from: number,
): readonly Stop[] {
  const { fluid, posterior, start, end } = period;
  const readings = soundReadings(period);
  const variation = variationOf(fluid, posterior);
  const places: { moment: Moment; reading: Reading | null }[] = [
    ...(start === null ? [] : [{ moment: start, reading: null }]),
    ...readings.map((reading) => ({ moment: reading, reading })),
    { moment: end, reading: null },
  ];
  return places.flatMap(({ moment, reading }, i) => {
    const before = places[i - 1]?.moment;
    if (before === undefined) return [{ moment, reading, variance: 0 }];
    if (moment.at < from) return [{ moment, reading, variance: variationBetween(variation, before, moment) }];
    const poured = pours.flatMap((pour) => {
      const isBetween =
        pour.before.pouredL >= before.pouredL && pour.before.pouredL + pour.amountL <= moment.pouredL;
      return isBetween ? [pour.before, { ...pour.before, pouredL: pour.before.pouredL + pour.amountL }] : [];
    });
    const between = [before, ...poured, moment].flatMap((place, k, all) =>
      k === 0 ? [] : [...(reading === null ? [] : daysBetween(all[k - 1]!, place, runHoursAt)), place],
    );
    const lost = (a: Moment, b: Moment) =>
      posterior.run * (b.runHours - a.runHours) + (posterior.rest * (b.at - a.at)) / MS_A_DAY;
    const all = lost(before, moment);
    const varies = variationBetween(variation, before, moment);
    return between.map((place, k) => ({
      moment: place,
      reading: k === between.length - 1 ? reading : null,
      variance: all > 0 ? (varies * lost(between[k - 1] ?? before, place)) / all : 0,
    }));
  });
}

/** Readings as ordinary ones: off the stick as the nearest normal, another way of reading without what it is off by. */
function soundReadings(period: ReadPeriod): readonly Reading[] {
  return onTheStick(period).map((reading) => {
    const off = reading.way === null ? undefined : period.waysAfter.get(reading.way);
    if (off === undefined) return reading;
    return { ...reading, levelL: reading.levelL - off.mean, sd: Math.hypot(reading.sd, off.sd) };
  });
}

function variationBetween(variation: ReturnType<typeof variationOf>, from: Moment, to: Moment): number {
  return variation(to.runHours - from.runHours, (to.at - from.at) / MS_A_DAY);
}

function daysBetween(from: Moment, to: Moment, runHoursAt: (at: number) => number): readonly Moment[] {
  const days = (to.at - from.at) / MS_A_DAY;
  if (days <= GAP_DAYS) return [];
  return Array.from({ length: Math.ceil(days) - 1 }, (_, i) => {
    const at = from.at + (i + 1) * MS_A_DAY;
    return { ...from, at, runHours: Math.min(to.runHours, Math.max(from.runHours, runHoursAt(at))) };
  });
}

/** A level that is linear in the two losses. */
interface Level {
  readonly mean: number;
  readonly run: number;
  readonly rest: number;
  readonly variance: number;
}

/** The level at a stop by the readings up to it, and by those before it alone; null there where none before reaches it. */
interface Seen {
  readonly moment: Moment;
  readonly before: Level | null;
  readonly level: Level;
}

function filtered(stops: readonly Stop[], { fluid, start }: ReadPeriod, from: number): readonly Seen[] {
  const kept: Seen[] = [];
  let last: { moment: Moment; level: Level } | null = null;
  for (const { moment, reading, variance } of stops) {
    let before: Level | null = null;
    if (last !== null && last.moment.fill === moment.fill)
      before = goneOn(last.level, last.moment, moment, variance);
    const begun = before ?? (reading && begin(reading.levelL, levelSdOf(fluid, reading) ** 2));
    if (begun === null && !(start !== null && last === null)) continue;
    const level =
      begun === null ? begin(start!.mean, start!.variance) : reading ? observe(begun, reading) : begun;
    last = { moment, level };
    if (moment.at >= from) kept.push({ moment, before, level });
  }
  return kept;
}

function begin(mean: number, variance: number): Level {
  return { mean, run: 0, rest: 0, variance };
}

function goneOn(level: Level, from: Moment, to: Moment, variance: number): Level {
  return {
    mean: level.mean + to.pouredL - from.pouredL,
    run: level.run - (to.runHours - from.runHours),
    rest: level.rest - (to.at - from.at) / MS_A_DAY,
    variance: level.variance + variance,
  };
}

function observe(level: Level, { levelL, sd }: Reading): Level {
  const gain = level.variance / (level.variance + sd * sd);
  return {
    mean: level.mean + gain * (levelL - level.mean),
    run: level.run * (1 - gain),
    rest: level.rest * (1 - gain),
    variance: level.variance * (1 - gain),
  };
}

/** What came after tells of what was before, from the end back. */
function smooth(seen: readonly Seen[]): readonly { moment: Moment; level: Level }[] {
  const smoothed: { moment: Moment; level: Level }[] = [];
  for (let i = seen.length - 1; i >= 0; i -= 1) {
    const { moment, level } = seen[i]!;
    const after = smoothed.at(-1)?.level;
    const foretold = seen[i + 1]?.before ?? null;
    if (after === undefined || foretold === null || foretold.variance === 0) {
      smoothed.push({ moment, level });
      continue;
    }
    const gain = level.variance / foretold.variance;
    smoothed.push({
      moment,
      level: {
        mean: level.mean + gain * (after.mean - foretold.mean),
        run: level.run + gain * (after.run - foretold.run),
        rest: level.rest + gain * (after.rest - foretold.rest),
        variance: level.variance + gain * gain * (after.variance - foretold.variance),
      },
    });
  }
  return smoothed.reverse();
}
