import type { Fluid } from '../boat/fluid.ts';
import type { Condition, FluidEvent } from '../condition/condition.ts';
import { type Stream, stream } from '../maths/stream.ts';
import { type Bounds, truncatedNormal } from '../maths/truncated-normal.ts';
import type { FluidBelief, FluidDraws, Spread } from './belief.ts';

const MS_A_DAY = 86_400_000;

export function believeFluid(fluid: Fluid, condition: Condition): FluidBelief | null {
  const { events, runHours } = condition.fluids.get(fluid.id)!;
  const last = events.findLastIndex((event) => event.kind === 'reading');
  const reading = events[last];
  if (reading === undefined || reading.kind !== 'reading') return null;
  const poured = events
    .slice(last + 1)
    .reduce((sum, event) => sum + (event.kind === 'topup' ? event.amountL : 0), 0);
  const since = { hours: runHours - reading.runHours, days: (condition.at - reading.at) / MS_A_DAY };
  const draw = (count: number, streamOf: (part: string) => Stream): FluidDraws => {
    const run = rateDraws(priorOf(fluid, 'perEngineHour', 200, 20), fluid, count, streamOf, 'run');
    const rest = rateDraws(priorOf(fluid, 'perDay', 100, 10), fluid, count, streamOf, 'rest');
    const errors = streamOf('level');
    const error = fluid.readingError ?? (fluid.full - fluid.low) / 20;
    const levelL = run.map(
      (rate, i) =>
        reading.levelL + poured + error * errors.normal() - rate * since.hours - rest[i]! * since.days,
    );
    return { levelL, run, rest };
  };
  const sample = draw(1024, (part) => stream(1, `${fluid.id}/${part}`));
  const leak = fluid.loss.leakChance;
  return {
    level: spreadOf(sample.levelL),
    run: spreadOf(sample.run),
    rest: spreadOf(sample.rest),
    usualDay: spreadOf(sample.rest),
    leak: { tight: (1 - leak) ** 2, running: leak * (1 - leak), lying: leak * (1 - leak), both: leak * leak },
    split: 'known',
    job: null,
    changedAt: null,
    rising: 0,
    leakClass: leakClassOf(events),
    draw,
  };
}

function leakClassOf(events: readonly FluidEvent[]) {
  const last = events.findLast((event) => event.kind === 'leak');
  return last?.kind === 'leak' ? last.class : null;
}

function priorOf(fluid: Fluid, per: 'perEngineHour' | 'perDay', usualParts: number, wideParts: number) {
  const marks = fluid.full - fluid.low;
  const { mean, sd, wide } = { mean: 0, sd: marks / usualParts, wide: undefined, ...fluid.loss[per] };
  return { mean, sd, wide: Math.max(3 * sd, wide ?? marks / wideParts) };
}

function rateDraws(
  prior: { mean: number; sd: number; wide: number },
  fluid: Fluid,
  count: number,
  streamOf: (part: string) => Stream,
  part: string,
): Float64Array {
  if (part === 'run' && fluid.engine === undefined) return new Float64Array(count);
  const kinds = streamOf(`${part}/kind`);
  const values = streamOf(part);
  const usual = quantileOf({ mean: prior.mean, sd: prior.sd, low: 0, high: Infinity });
  const leaking = quantileOf({ mean: prior.mean, sd: prior.wide, low: 0, high: Infinity });
  return Float64Array.from({ length: count }, () =>
    (kinds.uniform() < fluid.loss.leakChance ? leaking : usual)(values.uniform()),
  );
}

function quantileOf(bounds: Bounds): (p: number) => number {
  return bounds.sd === 0 ? () => bounds.mean : truncatedNormal(bounds).quantile;
}

function spreadOf(values: Float64Array): Spread {
  const sorted = values.toSorted();
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  const at = (share: number) => sorted[Math.floor(share * values.length)]!;
  return { mean, sd: Math.sqrt(variance), p10: at(0.1), p90: at(0.9) };
}
