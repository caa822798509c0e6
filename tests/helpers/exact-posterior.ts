import type { TwoParts } from '../../source/inference/rate-prior.ts';
import type { Reading } from '../../source/inference/readings.ts';
import { normalCdf } from '../../source/maths/normal.ts';

export interface Range {
  readonly p10: number;
  readonly p90: number;
}

const DAY = 86_400_000;
const NODES = 140;
/** Nodes lie closer together near nothing: x = scale * sinh(a), up to so much a. */
const STRETCH = 7;

/**
 * What readings on the stick say of run and rest where the loss of each day varies by a part of the true loss, and not of an expected one: the very world `FluidLife` lives in. A scalar filter for
 * every run and rest of a grid.
 */
export function exactRanges(
  readings: readonly Reading[],
  priors: { run: TwoParts; rest: TwoParts },
  vary: number,
  levelSd: number,
): { readonly run: Range; readonly rest: Range } {
  const runs = grid(priors.run);
  const rests = grid(priors.rest);
  const logs = runs.at.map((run) => rests.at.map((rest) => logChance(readings, run, rest, vary, levelSd)));
  const top = Math.max(...logs.map((row) => Math.max(...row)));
  const mass = logs.map((row, i) =>
    row.map((log, j) => Math.exp(log - top) * runs.weight[i]! * rests.weight[j]!),
  );
  return {
    run: rangeOf(
      runs.at,
      mass.map((row) => row.reduce((sum, value) => sum + value, 0)),
    ),
    rest: rangeOf(
      rests.at,
      rests.at.map((_, j) => mass.reduce((sum, row) => sum + row[j]!, 0)),
    ),
  };
}

/** Nodes with the prior's weight at each. */
function grid({ usual, leak }: TwoParts) {
  const scale = usual.sd / 10;
  const step = STRETCH / NODES;
  const at = Array.from({ length: NODES }, (_, i) => scale * Math.sinh((i + 0.5) * step));
  const weight = at.map((x, i) => {
    const density = [usual, leak].reduce((sum, { chance, mean, sd }) => {
      const z = (x - mean) / sd;
      return sum + (chance * Math.exp(-0.5 * z * z)) / (sd * normalCdf(mean / sd));
    }, 0);
    return density * scale * Math.cosh((i + 0.5) * step) * step;
  });
  return { at, weight };
}

function logChance(
  readings: readonly Reading[],
  run: number,
  rest: number,
  vary: number,
  levelSd: number,
): number {
  let [mean, variance, log] = [readings[0]!.levelL, levelSd ** 2, 0];
  for (let i = 0; i < readings.length; i += 1) {
    const { at, runHours, pouredL, levelL, sd } = readings[i]!;
    if (i > 0) {
      const before = readings[i - 1]!;
      const days = (at - before.at) / DAY;
      const lost = run * (runHours - before.runHours) + rest * days;
      mean += pouredL - before.pouredL - lost;
      variance += (vary * lost) ** 2 / Math.max(1, days);
    }
    const total = variance + sd * sd;
    const apart = levelL - mean;
    log -= 0.5 * ((apart * apart) / total + Math.log(total));
    mean += (variance / total) * apart;
    variance *= (sd * sd) / total;
  }
  return log;
}

function rangeOf(at: readonly number[], mass: readonly number[]): Range {
  const total = mass.reduce((sum, value) => sum + value, 0);
  const quantile = (share: number) => {
    let below = 0;
    for (let i = 0; i < at.length; i += 1) {
      const next = below + mass[i]! / total;
      if (next >= share) {
        const left = i === 0 ? 0 : (at[i]! + at[i - 1]!) / 2;
        const right = i + 1 < at.length ? (at[i]! + at[i + 1]!) / 2 : at[i]!;
        return left + ((share - below) / (next - below)) * (right - left);
      }
      below = next;
    }
    return at.at(-1)!;
  };
  return { p10: quantile(0.1), p90: quantile(0.9) };
}
