import { describe, expect, it } from 'vitest';
import { experimentFor } from '../../source/inference/experiment.ts';
import { stream } from '../../source/maths/stream.ts';
import { aFluid, FluidLife } from '../helpers/fluid-life.ts';
import { beliefOf } from '../helpers/leak-calls.ts';

const fluid = aFluid({ vary: 0.1 });
const usually = (mean: number, usualHours: number) => ({
  usualDay: { mean, sd: 0, p10: mean, p90: mean },
  usualHours,
});
const waiting = new Map([['main', { shape: 10, rate: 5 }]]);

/** A leak of a tenth of the marks on a usual day, of which each has two hours of running. */
function aLeak(seed: number, kind: 'running' | 'lying'): FluidLife {
  const chance = stream(seed, `experiment/${kind}`);
  const losses = kind === 'running' ? { run: 0.05, rest: 0.001 } : { run: 0.0005, rest: 0.1 };
  const life = new FluidLife(fluid, chance, losses);
  life.read();
  for (let day = 0; day < 12; day += 1) {
    life.live(2);
    life.read();
    if (life.needsTopUp()) life.topUp();
  }
  return life;
}

describe('where running and lying have gone hand in hand', () => {
  it.each(['running', 'lying'] as const)('the runs asked for do tell: a leak %s', (kind) => {
    let [asked, told, right] = [0, 0, 0];
    for (let seed = 1; seed <= 30; seed += 1) {
      const life = aLeak(seed, kind);
      const { split, toSettle } = beliefOf(fluid, life);
      if (split === 'known') continue;
      asked += 1;
      expect(toSettle!.runs).toBeLessThanOrEqual(30);
      for (let run = 0; run < toSettle!.runs; run += 1) {
        life.live(0, 1 - toSettle!.hours / 24);
        life.read();
        life.live(toSettle!.hours, toSettle!.hours / 24);
        life.read();
        if (life.needsTopUp()) life.topUp();
      }
      const after = beliefOf(fluid, life);
      if (after.split === 'known') told += 1;
      if (after.leak[kind] > 0.8) right += 1;
    }
    expect(asked).toBeGreaterThan(20);
    expect(told / asked).toBeGreaterThan(0.8);
    expect(right / asked).toBeGreaterThan(0.8);
  });

  it('the runs are those usual while lying, and the fewer the more is lost', () => {
    const few = experimentFor(fluid, usually(0.2, 2), ['main'], waiting)!;
    const more = experimentFor(fluid, usually(0.1, 2), ['main'], waiting)!;
    expect(few.hours).toBe(2);
    // 0.05 L of error twice, against what two hours of running lose more than two hours of lying.
    const apart = 0.1 - 0.1 / 12;
    expect(more.runs).toBe(Math.ceil((2 * 1.2815515655446004 * Math.SQRT2 * 0.05) ** 2 / apart ** 2));
    expect(few.runs).toBeLessThan(more.runs);
    expect(experimentFor(fluid, usually(0.2, 2), ['main'], new Map())!.hours).toBe(1);
  });

  it('none is named where charging hardly counts, or would not show in a month', () => {
    expect(experimentFor({ ...fluid, atAnchor: 0.05 }, usually(0.1, 2), ['main'], waiting)).toBeNull();
    expect(experimentFor(fluid, usually(0.001, 2), ['main'], waiting)).toBeNull();
    expect(experimentFor(fluid, usually(0.1, 0), ['main'], waiting)).toBeNull();
  });
});
