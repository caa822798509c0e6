import { positiveQuantile } from '../maths/positive-normal.ts';
import type { Stream } from '../maths/stream.ts';
import type { FluidDraws } from './belief.ts';
import { chooserOf } from './chooser.ts';
import type { Posterior } from './posterior.ts';
import type { Unmetered } from './running-since.ts';

/** Exact draws, one a passage: which pair, run by its inverse cdf, rest given run, the level given both; what ran since the meter was read, by that passage's own running hours a day. */
export function drawsOf(
  { members }: Posterior,
  unmetered: readonly Unmetered[],
  count: number,
  streamOf: (part: string) => Stream,
  hoursADay: (engine: string) => Float64Array,
): FluidDraws {
  const [kinds, runs, rests, levels] = ['kind', 'run', 'rest', 'level'].map(streamOf) as [
    Stream,
    Stream,
    Stream,
    Stream,
  ];
  const choose = chooserOf(members.map(({ weight }) => weight));
  const since = unmetered.map(({ engine, days }) => ({ days, aDay: hoursADay(engine) }));
  const drawn = {
    levelL: new Float64Array(count),
    run: new Float64Array(count),
    rest: new Float64Array(count),
  };
  for (let i = 0; i < count; i += 1) {
    const { pair } = members[choose(kinds.uniform())]!;
    const run = pair.runQuantile(runs.uniform());
    const rest = positiveQuantile(pair.restMean(run), pair.shape.sdRest, rests.uniform());
    let hours = 0;
    for (const { days, aDay } of since) hours += days * aDay[i]!;
    drawn.run[i] = run;
    drawn.rest[i] = rest;
    drawn.levelL[i] = pair.levelMean(run, rest) + pair.shape.sdLevel * levels.normal() - run * hours;
  }
  return drawn;
}
