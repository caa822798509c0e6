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
  /** Made good, kn. */
  readonly speed: Float64Array;
  /** Share of the passage motored where no forecast decides, by engine. */
  readonly share: ReadonlyMap<string, Float64Array>;
  /** Under way, from leaving (or, already under way, from now) to arrival, h. */
  readonly hours: Float64Array;
  /** Whether the hours motored are the same whenever she leaves: without a forecast they are. */
  readonly motoringIsFixed: boolean;
  /** Engine hours under way of these engines together, when leaving at that hour. Not to be changed. */
  motoredBy(engines: readonly string[], hour: number): Float64Array;
  /** The most of them at any departure. */
  mostMotored(engines: readonly string[]): Float64Array;
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
  const speed = speeds(condition, options.count, streamOf('passage/speed'));
  const hours = passageHours(condition, speed);
  const drawn = new Float64Array(options.count);
  streamOf('passage/motoring').fillUniform(drawn);
  const share = new Map(boat.engines.map(({ id }) => [id, sharesMotored(condition, id, drawn)]));
  const motored = new Map([...share].map(([id, shares]) => [id, shares.map((part, i) => part * hours[i]!)]));
  const motoredBy = (engines: readonly string[]) =>
    together(
      engines.map((engine) => motored.get(engine)!),
      options.count,
    );
  return {
    ...options,
    now: condition.at,
    lastHour: condition.underWay === null ? options.lastHour : 0,
    reserveDays: condition.reserveDays,
    speed,
    share,
    hours,
    motoringIsFixed: true,
    motoredBy,
    mostMotored: motoredBy,
    waiting: new Map(
      boat.engines.map(({ id }) => [
        id,
        waitingHours(beliefs.waiting.get(id)!, options.count, streamOf(`engine/${id}/waiting`)),
      ]),
    ),
    streamOf,
  };
}

/** Hours since she left; 0 while she lies. */
export function hoursUnderWay({ underWay, at }: Condition): number {
  return underWay === null ? 0 : (at - underWay.since) / MS_AN_HOUR;
}

/** Speed is normal, truncated below a quarter of its mean. Infinite with no passage planned: she has arrived. */
function speeds({ passage }: Condition, count: number, draws: Stream): Float64Array {
  const speed = new Float64Array(count).fill(Infinity);
  if (passage === null) return speed;
  const { mean } = passage.speed;
  const quantile = quantileOf({ ...passage.speed, low: mean / 4, high: Infinity });
  return speed.map(() => quantile(draws.uniform()));
}

/** Already under way, what is left of the passage counts. */
function passageHours(condition: Condition, speed: Float64Array): Float64Array {
  const nm = condition.passage === null ? 0 : passageNm(condition.passage);
  const sailed = hoursUnderWay(condition);
  return speed.map((knots) => Math.max(0, nm / knots - sailed));
}

function together(motored: readonly Float64Array[], count: number): Float64Array {
  if (motored.length === 1) return motored[0]!;
  const sum = new Float64Array(count);
  for (const one of motored) for (let i = 0; i < count; i += 1) sum[i] = sum[i]! + one[i]!;
  return sum;
}

function sharesMotored({ passage }: Condition, engine: string, drawn: Float64Array): Float64Array {
  const usual = passage?.motoring[engine];
  if (usual === undefined) return new Float64Array(drawn.length);
  return drawn.map(quantileOf({ ...usual, low: 0, high: 1 }));
}

function quantileOf(bounds: Bounds): (p: number) => number {
  return bounds.sd === 0 ? () => bounds.mean : truncatedNormal(bounds).quantile;
}

function waitingHours(belief: WaitingBelief, count: number, draws: Stream): Float64Array {
  if ('fixed' in belief) return new Float64Array(count);
  return gammaDraws(belief, count, draws);
}
