import type { Fields } from '../../source/logbook/entries.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';
import { gearJob, lastFortnight, type Place, startsAt } from './sample-calendar.ts';
import type { Said } from './sample-happenings.ts';

/** What the fluids truly do, L: what the readings are made from, and what no reader of the log is told. `step`: as finely as one reads. */
export const truths = {
  'engine-oil': { low: 3.5, full: 4.5, run: 0.008, rest: 0, atAnchor: 0.6, error: 0.04, step: 0.05 },
  'gear-oil': { low: 1, full: 1.2, run: 0.022, rest: 0.005, atAnchor: 0.1, error: 0.01, step: 0.01 },
  coolant: { low: 5.5, full: 6, run: 0.0012, rest: 0.0006, atAnchor: 0.6, error: 0.02, step: 0.025 },
  fuel: { low: 0, full: 180, run: 2.45, rest: 0, atAnchor: 0.4, error: 3, step: 5 },
  water: { low: 0, full: 260, run: 0, rest: 12.3, atAnchor: 0, error: 5, step: 5 },
} as const;

export type FluidId = keyof typeof truths;

/** After the job the gear oil goes at about a third of what it did. */
const gearAfterJob = { run: 0.0072, rest: 0.0016 };

/** How much a loss varies from day to day, as a part of itself. */
const varies = 0.3;

const seed = 20251014;

/** The boat as she truly is on a day of her life. */
export interface Aboard {
  /** Engine hours since the log began; the meter reads `meterStart` more. */
  engineHours: number;
  meterStart: number;
  /** Engine hours at the last entry of the meter. */
  hoursEntered: number;
  place: Place;
  arrivedOn: string;
  pressure: number;
  readonly levels: Record<FluidId, number>;
  readonly chance: Readonly<Record<'rounds' | 'usage' | 'errors' | 'checks' | 'weather', Stream>>;
}

export function atLaunch(): Aboard {
  const chance = (name: string) => stream(seed, `sample-boat/${name}`);
  return {
    engineHours: 0,
    meterStart: 3214.6,
    hoursEntered: 0,
    place: startsAt,
    arrivedOn: '',
    pressure: 1014,
    levels: { 'engine-oil': 4.5, 'gear-oil': 1.2, coolant: 6, fuel: 168, water: 240 },
    chance: {
      rounds: chance('rounds'),
      usage: chance('usage'),
      errors: chance('errors'),
      checks: chance('checks'),
      weather: chance('weather'),
    },
  };
}

/** Runs the engine that long on that day, under way or lying. */
export function run(aboard: Aboard, day: string, hours: number, where: 'under way' | 'lying'): void {
  aboard.engineHours += hours;
  lose(aboard, day, (truth) => truth.run * hours * (where === 'under way' ? 1 : truth.atAnchor));
}

/** What goes in a day whether the engine runs or not. */
export function dayPasses(aboard: Aboard, day: string): void {
  lose(aboard, day, (truth) => truth.rest);
}

function lose(
  { levels, chance }: Aboard,
  day: string,
  lossOf: (truth: { run: number; rest: number; atAnchor: number }) => number,
): void {
  for (const id of Object.keys(truths) as FluidId[]) {
    const mended = id === 'gear-oil' && day > gearJob;
    const loss = lossOf(mended ? { ...truths[id], ...gearAfterJob } : truths[id]);
    levels[id] -= loss * Math.max(0, 1 + varies * chance.usage.normal());
  }
}

export function meterRead(aboard: Aboard): Said {
  aboard.hoursEntered = aboard.engineHours;
  return { kind: 'hours', engine: 'main', reading: rounded(aboard.meterStart + aboard.engineHours, 0.1) };
}

/** A look at a level with its reading error: a tank in litres, a stick as a share of its marks. Now and then she rolls. */
export function dip(
  { levels, chance }: Aboard,
  fluid: FluidId,
  day: string,
): { kind: 'dip' } & Fields<'dip'> {
  const { low, full, error, step } = truths[fluid];
  const rolls = chance.errors.uniform() < 0.03 && day < lastFortnight;
  const read = levels[fluid] + error * (rolls ? 2.5 : 1) * chance.errors.normal();
  const level = Math.min(full, Math.max(low, rounded(read, step)));
  const found = low === 0 ? { level } : { share: shareOf(fluid, level) };
  return { kind: 'dip', fluid, ...found, ...(rolls ? { rough: true } : {}) };
}

/** 0 at the low mark, 1 at the full mark, to a hundredth. */
export function shareOf(fluid: FluidId, level: number): number {
  const { low, full } = truths[fluid];
  return rounded((level - low) / (full - low), 0.01);
}

export function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(3));
}
