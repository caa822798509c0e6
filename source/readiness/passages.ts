import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs, WaitingBelief } from '../inference/belief.ts';
import { gammaDraws } from '../maths/gamma-draws.ts';
import { type Stream, stream } from '../maths/stream.ts';
import { type Bounds, truncatedNormal } from '../maths/truncated-normal.ts';
import { passageNm } from '../passage/distance.ts';

const MS_AN_HOUR = 3_600_000;

/** The simulated passages: what each draws once and all requirements share (model 2). Arrays hold one value a passage. */
export interface Passages {
  readonly count: number;
  readonly seed: number;
  readonly now: number;
  /** The last departure looked at, whole hours from now. */
  readonly lastHour: number;
  /** The boat threshold as a chance, 0..1. */
  readonly threshold: number;
  readonly reserveDays: number;
  /** Under way, from leaving (or, already under way, from now) to arrival, h. */
  readonly hours: Float64Array;
  /** Whether the hours motored are the same whenever she leaves: without a forecast they are. */
  readonly motoringIsFixed: boolean;
  /** Engine hours under way of these engines together, when leaving at that hour. Not to be changed. */
  motoredBy(engines: readonly string[], hour: number): Float64Array;
  /** Engine hours a day while waiting, by engine. */
  readonly waiting: ReadonlyMap<string, Float64Array>;
  /** The named stream of one thing's own part, this seed's. */
  streamOf(name: string): Stream;
}

/** Draws `count` passages. Without a passage planned only `reserveDays` must be lasted. */
export function drawPassages(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  options: { count: number; seed: number; lastHour: number; threshold: number },
): Passages {
  const streamOf = (name: string) => stream(options.seed, name);
  const hours = passageHours(condition, options.count, streamOf('passage/speed'));
  const share = new Float64Array(options.count);
  streamOf('passage/motoring').fillUniform(share);
  const motored = new Map(boat.engines.map(({ id }) => [id, motoredHours(condition, id, hours, share)]));
  return {
    ...options,
    now: condition.at,
    lastHour: condition.underWay === null ? options.lastHour : 0,
    reserveDays: condition.reserveDays,
    hours,
    motoringIsFixed: true,
    motoredBy: (engines) =>
      together(
        engines.map((engine) => motored.get(engine)!),
        options.count,
      ),
    waiting: new Map(
      boat.engines.map(({ id }) => [
        id,
        waitingHours(beliefs.waiting.get(id)!, options.count, streamOf(`engine/${id}/waiting`)),
      ]),
    ),
    streamOf,
  };
}

/** Speed is normal, truncated below a quarter of its mean; already under way, what is left of the passage counts. */
function passageHours({ passage, underWay, at }: Condition, count: number, draws: Stream): Float64Array {
  const hours = new Float64Array(count);
  if (passage === null) return hours;
  const nm = passageNm(passage);
  const { mean } = passage.speed;
  const speed = quantileOf({ ...passage.speed, low: mean / 4, high: Infinity });
  const sailed = underWay === null ? 0 : (at - underWay.since) / MS_AN_HOUR;
  for (let i = 0; i < count; i += 1) {
    hours[i] = Math.max(0, nm / speed(draws.uniform()) - sailed);
  }
  return hours;
}

function together(motored: readonly Float64Array[], count: number): Float64Array {
  if (motored.length === 1) return motored[0]!;
  const sum = new Float64Array(count);
  for (const one of motored) for (let i = 0; i < count; i += 1) sum[i] = sum[i]! + one[i]!;
  return sum;
}

function motoredHours(
  { passage }: Condition,
  engine: string,
  hours: Float64Array,
  share: Float64Array,
): Float64Array {
  const motored = new Float64Array(hours.length);
  const usual = passage?.motoring[engine];
  if (usual === undefined) return motored;
  const sharesMotored = quantileOf({ ...usual, low: 0, high: 1 });
  for (let i = 0; i < motored.length; i += 1) motored[i] = hours[i]! * sharesMotored(share[i]!);
  return motored;
}

function quantileOf(bounds: Bounds): (p: number) => number {
  return bounds.sd === 0 ? () => bounds.mean : truncatedNormal(bounds).quantile;
}

function waitingHours(belief: WaitingBelief, count: number, draws: Stream): Float64Array {
  if ('fixed' in belief) return new Float64Array(count);
  return gammaDraws(belief, count, draws);
}
