import type { Boat } from '../boat/boat.ts';
import type { Limits } from '../boat/limits.ts';
import type { Condition } from '../condition/condition.ts';
import type { Forecast } from '../forecast/forecast.ts';
import type { Beliefs } from '../inference/belief.ts';
import type { Turns } from '../maths/turns.ts';
import { isNear, type Judged, judgingItems } from './judged.ts';
import { type Course, courseThrough } from './weather.ts';

/** Model 1: near a threshold more passages are simulated, up to so many. */
const MOST_PASSAGES = 65_536;
const MORE = 4;

/** What is judged, and with how many passages to begin with. */
export interface ToJudge {
  readonly boat: Boat;
  readonly condition: Condition;
  readonly beliefs: Beliefs;
  /** The forecast that counts; null where there is none. */
  readonly forecast: Forecast | null;
  readonly seed: number;
  readonly simulations: number;
}

/** The forecast along the passage planned; null where there is none, or it says nothing of it any more. */
export function courseOf({ forecast, condition }: ToJudge, limits: Limits): Course | null {
  return forecast && courseThrough(forecast, condition, limits);
}

/** Judges with more passages while the score is too near a threshold to tell. */
export function* judgeEnough(input: ToJudge, limits: Limits, course: Course | null): Turns<Judged> {
  const { boat, condition, beliefs } = input;
  const withPassages = (count: number) =>
    judgingItems(boat, condition, beliefs, {
      count,
      seed: input.seed,
      threshold: limits.boat / 100,
      limits,
      course,
    });
  let judged = yield* withPassages(input.simulations);
  while (isNear(judged, limits) && judged.passages.count * MORE <= MOST_PASSAGES)
    judged = yield* withPassages(judged.passages.count * MORE);
  return judged;
}

/** The limits that hold: with one aboard those given for it take the place of the others. */
export function limitsOf({ limits }: Boat, crew: number): Limits {
  if (crew > 1 || limits.alone === undefined) return limits;
  const given = Object.entries(limits.alone).filter(([, value]) => value !== undefined);
  return { ...limits, ...Object.fromEntries(given) };
}
