import type { Fluid } from '../../source/boat/fluid.ts';
import { believeFluid } from '../../source/inference/fluid.ts';
import { usualPriors } from '../../source/inference/rate-prior.ts';
import { positiveQuantile } from '../../source/maths/positive-normal.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';
import { aFluid, conditionOf, FluidLife, hoursOfADay } from './fluid-life.ts';

const MOST_HOURS = 4;
const engines = [{ id: 'main', name: 'Main engine', usualHoursPerDay: 1 }];

/** What is said of a life so far. */
export function beliefOf(fluid: Fluid, life: FluidLife) {
  return believeFluid(fluid, engines, conditionOf(fluid, life), new Map())!;
}

/** Whether a fluid with its usual losses, read every day of a year, was ever called leaking at a look; looked at every so many days. */
export function everCalledLeaking(seed: number, everyDays: number): boolean {
  const chance = stream(seed, 'leak calls/healthy');
  const fluid = aFluid();
  const life = new FluidLife(fluid, chance, usualLosses(fluid, chance));
  life.read();
  for (let day = 1; day <= 365; day += 1) {
    aDay(life, chance);
    if (day % everyDays === 0 && beliefOf(fluid, life).leak.tight < 0.5) return true;
  }
  return false;
}

export interface Calls {
  /** The reading at which it was first called leaking. */
  readonly at: number;
  /** Whether within 13 readings its own kind weighed more than 0.8. */
  readonly right: boolean;
}

/** A leak of a tenth of the marks a day (an hour a day on average), with 30 % daily variation, from the first reading on. */
export function callsOfALeak(seed: number, kind: 'lying' | 'running'): Calls {
  const chance = stream(seed, `leak calls/${kind}`);
  const fluid = aFluid({ vary: 0.3 });
  const usual = usualLosses(fluid, chance);
  const tenth = (fluid.full - fluid.low) / 10;
  const life = new FluidLife(
    fluid,
    chance,
    kind === 'lying' ? { ...usual, rest: tenth } : { ...usual, run: tenth },
  );
  life.read();
  let [at, right] = [Number.POSITIVE_INFINITY, false];
  for (let reading = 2; reading <= 13; reading += 1) {
    aDay(life, chance);
    const { leak } = beliefOf(fluid, life);
    if (leak.tight < 0.5) at = Math.min(at, reading);
    right ||= leak[kind] > 0.8;
  }
  return { at, right };
}

function aDay(life: FluidLife, chance: Stream): void {
  life.live(hoursOfADay(chance, MOST_HOURS));
  life.read();
  if (life.needsTopUp()) life.topUp();
}

function usualLosses(fluid: Fluid, chance: Stream) {
  const { run, rest } = usualPriors(fluid, 0);
  const draw = ({ mean, sd }: { mean: number; sd: number }) => positiveQuantile(mean, sd, chance.uniform());
  return { run: draw(run.usual), rest: draw(rest.usual) };
}
