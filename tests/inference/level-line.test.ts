import { describe, expect, it } from 'vitest';
import { levelLine } from '../../source/inference/level-line.ts';
import { readPeriod } from '../../source/inference/period.ts';
import { usualPriors } from '../../source/inference/rate-prior.ts';
import { lifeOf } from '../../source/inference/readings.ts';
import { stream } from '../../source/maths/stream.ts';
import { rateFrom } from '../helpers/calibration.ts';
import { aFluid, FluidLife, hoursOfADay } from '../helpers/fluid-life.ts';
import { beliefOf } from '../helpers/leak-calls.ts';

const DAY = 86_400_000;

/** A life read most days, sometimes after some days, with what its level truly was at each reading. */
function aLife(seed: number, vary: number, readings: number) {
  const fluid = aFluid({ vary });
  const chance = stream(seed, `level line/${vary}`);
  const priors = usualPriors(fluid, fluid.loss.leakChance);
  const life = new FluidLife(fluid, chance, {
    run: rateFrom(priors.run, chance),
    rest: rateFrom(priors.rest, chance),
  });
  const truth = new Map<number, number>();
  const look = () => {
    life.read();
    if (life.needsTopUp()) life.topUp();
    truth.set(life.at, life.levelL);
  };
  look();
  for (let i = 1; i < readings; i += 1) {
    const days = chance.uniform() < 0.7 ? 1 : 1 + 3 * chance.uniform();
    life.live(days * hoursOfADay(chance, 4), days);
    look();
  }
  return { fluid, life, truth, priors };
}

/** The line of a life that is one period, to its last reading. */
function lineOf({ fluid, life, priors }: ReturnType<typeof aLife>) {
  const { readings, pours, end } = lifeOf(fluid, life.events);
  const now = { at: life.at, runHours: life.runHours, ...end };
  const period = readPeriod({ fluid, priors, start: null, readings, end: now, ways: new Map() });
  const line = levelLine(period, pours, () => life.runHours, 0);
  return { period, line };
}

describe('the line through the readings', () => {
  it.each([0, 0.3])(
    'holds the true level within its 10..90 % range 8 times in 10, at every reading of 120 lives (daily variation %s)',
    (vary) => {
      let [held, all] = [0, 0];
      for (let seed = 1; seed <= 120; seed += 1) {
        const life = aLife(seed, vary, 3 + (seed % 17));
        const { line } = beliefOf(life.fluid, life.life).lately;
        for (const [at, level] of life.truth) {
          const point = line.findLast((one) => one.at === at)!;
          all += 1;
          if (level >= point.p10 && level <= point.p90) held += 1;
        }
      }
      expect(all).toBeGreaterThan(1000);
      expect(held / all).toBeGreaterThan(0.75);
      expect(held / all).toBeLessThan(0.85);
    },
  );

  it('ends where the readings say the level is now, as surely', () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const { period, line } = lineOf(aLife(seed, 0.3, 8));
      const { level, varLevel } = period.posterior;
      const sd = Math.sqrt(varLevel);
      const end = line.at(-1)!;
      expect(Math.abs(end.mean - level) / sd, `life ${seed}`).toBeLessThan(0.1);
      expect((end.p90 - end.p10) / (2 * 1.2815515655446004 * sd), `life ${seed}`).toBeCloseTo(1, 1);
    }
  });

  it('steps up where something was poured in, and nowhere else', () => {
    const life = aLife(1, 0.3, 8);
    life.life.live(10, 1);
    life.life.topUp();
    const { line } = lineOf(life);
    const rises = line.flatMap((point, i) => {
      const before = line[i - 1];
      return before && point.mean > before.mean + 0.02 ? [point.at - before.at] : [];
    });
    expect(rises.length).toBeGreaterThan(0);
    expect(rises.every((apart) => apart === 0)).toBe(true);
  });

  it('is least sure in the middle of a gap, which has a point a day', () => {
    const fluid = aFluid({ vary: 0.6 });
    const life = new FluidLife(fluid, stream(1, 'gap'), { run: 0, rest: 0.08 });
    for (let day = 0; day < 9; day += 1) {
      life.read();
      life.live(0);
    }
    life.topUp();
    const before = life.at;
    life.live(0, 10);
    life.read();
    const { line } = beliefOf(fluid, life).lately;
    const gap = line.filter(({ at }) => at >= before);
    const widths = gap.map(({ p10, p90 }) => p90 - p10);
    expect(gap.length).toBeGreaterThanOrEqual(10);
    expect(Math.max(...widths.slice(1, -1))).toBeGreaterThan(widths[0]!);
    expect(Math.max(...widths.slice(1, -1))).toBeGreaterThan(widths.at(-1)!);
  });

  it('goes through a reading off the stick below the stick, and begins anew at a refill', () => {
    const fluid = aFluid();
    const life = new FluidLife(fluid, stream(1, 'off the stick'), { run: 0, rest: 0.3 });
    for (let day = 0; day < 5; day += 1) {
      life.read();
      life.live(0);
    }
    life.read();
    const off = life.at;
    life.live(0);
    life.tell({ kind: 'change' });
    life.tell({ kind: 'reading', levelL: 2, off: 'on', how: 'stopped-cold', rough: false, after: 'change' });
    const { line } = beliefOf(fluid, life).lately;
    expect(line.find(({ at }) => at === off)!.mean).toBeLessThan(fluid.low);
    expect(line.at(-1)!.mean).toBeGreaterThan(1.9);
  });

  it('reaches back two months from the last reading, or as many readings as a page holds', () => {
    const fluid = aFluid();
    const life = new FluidLife(fluid, stream(1, 'long'), { run: 0.001, rest: 0.002 });
    for (let day = 0; day < 300; day += 1) {
      life.live(1);
      life.read();
    }
    const { readings, line } = beliefOf(fluid, life).lately;
    expect(readings).toHaveLength(61);
    expect(line[0]!.at).toBe(life.at - 60 * DAY);
    for (let look = 0; look < 300; look += 1) {
      life.live(0.1, 1 / 24);
      life.read();
    }
    expect(beliefOf(fluid, life).lately.readings).toHaveLength(120);
  });
});
