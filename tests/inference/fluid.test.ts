import { describe, expect, it } from 'vitest';
import { stream } from '../../source/maths/stream.ts';
import { aFluid, FluidLife, hoursOfADay } from '../helpers/fluid-life.ts';
import { beliefOf } from '../helpers/leak-calls.ts';

const DAY = 86_400_000;
const fluid = aFluid();
const tight = { run: 0.002, rest: 0.004 };

function aLife(name: string, losses: { run: number; rest: number }, days: number) {
  const chance = stream(1, `fluid/${name}`);
  const life = new FluidLife(fluid, chance, losses);
  life.read();
  const go = (more: number, hours = () => hoursOfADay(chance, 4)) => {
    for (let day = 0; day < more; day += 1) {
      life.live(hours());
      life.read();
      if (life.needsTopUp()) life.topUp();
    }
  };
  go(days);
  return { life, go, believed: () => beliefOf(fluid, life) };
}

describe('work done', () => {
  it('that helped is told so, with the ratio, and needs no more days', () => {
    const { life, go, believed } = aLife('helped', { run: 0.06, rest: 0.02 }, 30);
    life.work('nipped up the seal');
    [life.run, life.rest] = [0.02, 0.006];
    go(20);
    const { job } = believed();
    expect(job!.text).toBe('nipped up the seal');
    expect(job!.lowerChance).toBeGreaterThan(0.99);
    expect(job!.ratio.p10).toBeLessThan(0.33);
    expect(job!.ratio.p90).toBeGreaterThan(0.33);
    expect(job!.daysToSettle).toBe(0);
  });

  it('that helped a little takes days to show, and says how many', () => {
    const { life, go, believed } = aLife('a little', { run: 0.03, rest: 0.02 }, 40);
    life.work();
    [life.run, life.rest] = [0.022, 0.015];
    go(2);
    const { daysToSettle, lowerChance } = believed().job!;
    expect(lowerChance).toBeLessThan(0.9);
    expect(daysToSettle === null || daysToSettle > 0).toBe(true);
  });

  it('that made it worse is told so, from the work on', () => {
    const { life, go, believed } = aLife('worse', tight, 40);
    life.work();
    const { at } = life;
    life.rest = 0.12;
    go(8);
    const { job, leak, changedAt } = believed();
    expect(job!.lowerChance).toBeLessThan(0.1);
    expect(leak.tight).toBeLessThan(0.2);
    expect(changedAt).toBeGreaterThan(at);
    expect(changedAt).toBeLessThan(at + 3 * DAY);
  });

  it('carries the level over: it is known as well as before', () => {
    const { life, believed } = aLife('carried', tight, 20);
    const before = believed().level;
    life.work();
    const { level } = believed();
    expect(level.mean).toBeCloseTo(before.mean, 6);
    expect(level.sd).toBeCloseTo(before.sd, 6);
  });
});

describe('a loss that changed by itself', () => {
  it('is told, and dated within a few days', () => {
    const { life, go, believed } = aLife('changed', tight, 60);
    const { at } = life;
    life.rest = 0.1;
    go(8);
    const { changedAt, leak } = believed();
    expect(Math.abs(changedAt! - at)).toBeLessThan(3.5 * DAY);
    expect(leak.lying + leak.both).toBeGreaterThan(0.9);
  });

  it('stops being news after a month', () => {
    const { life, go, believed } = aLife('old news', tight, 60);
    life.rest = 0.1;
    go(50);
    expect(believed().changedAt).toBeNull();
    expect(Math.abs(believed().rest.mean - 0.1)).toBeLessThan(0.02);
  });

  it('is not seen where there is none', () => {
    const { believed } = aLife('steady', { run: 0.05, rest: 0.03 }, 120);
    expect(believed().changedAt).toBeNull();
  });

  it('a level that dropped at once is what was read, and watched', () => {
    const { life, go, believed } = aLife('dropped', tight, 30);
    life.levelL -= 0.5;
    go(1);
    const { level, changedAt } = believed();
    expect(Math.abs(level.mean - life.levelL)).toBeLessThan(0.15);
    expect(changedAt).toBe(life.at);
  });

  it('so is nothing on the stick after weeks of enough', () => {
    const { life, believed } = aLife('gone', tight, 30);
    life.levelL = 0.5;
    life.live(1);
    life.read();
    expect(believed().level.p90).toBeLessThan(fluid.low + 0.05);
  });
});

describe('a level that rises', () => {
  it('with nothing poured in is told: day by day, or at once', () => {
    const slowly = aLife('slowly', { run: 0, rest: 0 }, 0);
    slowly.life.levelL = 1.3;
    slowly.life.read();
    for (let day = 0; day < 20; day += 1) {
      slowly.life.levelL += 0.03;
      slowly.life.live(0);
      slowly.life.read();
    }
    expect(slowly.believed().rising).toBeGreaterThan(0.9);
    const { life, go, believed } = aLife('at once', { run: 0.002, rest: 0.015 }, 30);
    life.levelL += 0.6;
    go(2);
    expect(believed().rising).toBeGreaterThan(0.9);
  });

  it('because it was topped up is not', () => {
    const { life, go, believed } = aLife('topped up', { run: 0.002, rest: 0.02 }, 25);
    life.topUp();
    go(3);
    expect(believed().rising).toBeLessThan(0.5);
  });
});

describe('running or lying', () => {
  it('cannot be told apart where hours and days went hand in hand, though their sum is known', () => {
    const { go, believed } = aLife('hand in hand', { run: 0.06, rest: 0.05 }, 0);
    go(20, () => 1);
    const { split, leak, run, rest, usualDay } = believed();
    expect(leak.tight).toBeLessThan(0.5);
    expect(split).toBe('cannot tell');
    expect(usualDay.mean).toBeCloseTo(0.11, 1);
    expect(usualDay.sd).toBeLessThan(Math.min(run.sd, rest.sd));
  });

  it('can where they did not', () => {
    expect(aLife('apart', { run: 0.1, rest: 0.002 }, 20).believed().split).toBe('known');
  });
});

describe('how a reading was taken', () => {
  const read = (life: FluidLife, levelL: number, fields: object = {}) =>
    life.tell({
      kind: 'reading',
      levelL,
      off: 'on',
      how: 'stopped-cold',
      rough: false,
      after: null,
      ...fields,
    });

  it('readings taken another way have their own offset, and say no less of the loss', () => {
    const chance = stream(1, 'fluid/ways');
    const life = new FluidLife(fluid, chance, { run: 0, rest: 0.03 });
    for (let day = 0; day < 20; day += 1) {
      const hot = day % 2 === 1;
      const seen = life.levelL + (hot ? 0.2 : 0) + 0.05 * chance.normal();
      read(life, seen, hot ? { how: 'stopped-hot' } : {});
      life.live(0);
    }
    const { rest, level, changedAt } = beliefOf(fluid, life);
    expect(rest.mean).toBeCloseTo(0.03, 2);
    expect(Math.abs(level.mean - life.levelL)).toBeLessThan(3 * level.sd);
    expect(changedAt).toBeNull();
  });

  it('one with the boat rolling counts for less', () => {
    const level = (rough: boolean) => {
      const life = new FluidLife(fluid, stream(1, 'fluid/rough'), tight);
      read(life, 1.8, { rough });
      return beliefOf(fluid, life).level.sd;
    };
    expect(level(true) / level(false)).toBeCloseTo(2.5, 2);
  });

  it('off the stick is below its end, however far', () => {
    const life = new FluidLife(fluid, stream(1, 'fluid/below'), tight);
    read(life, fluid.low, { off: 'below' });
    const { level } = beliefOf(fluid, life);
    expect(level.p90).toBeLessThan(fluid.low + 0.05);
    expect(level.p10).toBeGreaterThan(0);
  });

  it('over full is above the mark', () => {
    const life = new FluidLife(fluid, stream(1, 'fluid/above'), tight);
    read(life, fluid.full, { off: 'above' });
    expect(beliefOf(fluid, life).level.p10).toBeGreaterThan(fluid.full - 0.05);
  });
});

describe('a leak seen', () => {
  it('makes a leak likely until work or a dry look', () => {
    const { life, believed } = aLife('seen', { run: 0.004, rest: 0.008 }, 4);
    const before = believed().leak.tight;
    life.tell({ kind: 'leak', class: 'drops', dropsPerMinute: null });
    expect(believed().leakClass).toBe('drops');
    expect(believed().leak.tight).toBeLessThan(before / 2);
    life.tell({ kind: 'leak', class: 'dry', dropsPerMinute: null });
    expect([believed().leakClass, believed().leak.tight]).toEqual(['dry', before]);
  });

  it('of drops that fall tells the least that is lost; of a fuel no work alone ends it', () => {
    const { life, believed } = aLife('falls', tight, 4);
    life.tell({ kind: 'leak', class: 'falls', dropsPerMinute: 10 });
    expect(believed().leastLossLPerDay).toBeCloseTo(0.72, 6);
    life.work();
    expect([believed().leakClass, believed().leastLossLPerDay]).toEqual([null, 0]);
    const fuel = aFluid({ fuel: true });
    const look = (seen: 'wet' | 'dry') => life.tell({ kind: 'leak', class: seen, dropsPerMinute: null });
    look('wet');
    life.work();
    expect(beliefOf(fuel, life).leakClass).toBe('wet');
    look('dry');
    expect(beliefOf(fuel, life).leakClass).toBe('dry');
    look('wet');
    look('dry');
    expect(beliefOf(fuel, life).leakClass).toBe('wet');
  });
});

describe('as time goes by', () => {
  it('the level goes on falling from the last reading, by days and by the hours still to be metered, with more doubt', () => {
    const { life, believed } = aLife('goes on', { run: 0.05, rest: 0.05 }, 20);
    const then = believed();
    life.at += 5 * DAY;
    const now = believed();
    expect(now.level.mean).toBeCloseTo(then.level.mean - 5 * then.rest.mean, 2);
    expect(now.level.sd).toBeGreaterThan(then.level.sd);
    const draws = now.draw(
      4096,
      (part) => stream(1, part),
      () => new Float64Array(4096).fill(2),
    );
    const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(draws.levelL)).toBeCloseTo(now.level.mean - 5 * 2 * now.run.mean, 2);
  });
});

describe('draws', () => {
  const belief = aLife('draws', { run: 0.03, rest: 0.02 }, 12).believed();
  const draw = (count: number) =>
    belief.draw(
      count,
      (part) => stream(7, part),
      () => new Float64Array(count),
    );

  it('have the means, sds and quantiles told', () => {
    const { run, rest, levelL } = draw(65_536);
    for (const [values, told] of [
      [run, belief.run],
      [rest, belief.rest],
      [levelL, belief.level],
    ] as const) {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
      const sorted = values.toSorted();
      expect(Math.abs(mean - told.mean) / told.sd).toBeLessThan(0.02);
      expect(Math.abs(sd / told.sd - 1)).toBeLessThan(0.02);
      expect(Math.abs(sorted[6554]! - told.p10) / told.sd).toBeLessThan(0.03);
      expect(Math.abs(sorted[58_982]! - told.p90) / told.sd).toBeLessThan(0.03);
    }
  });

  it('of more passages begin with those of fewer', () => {
    const [few, many] = [draw(100), draw(1000)];
    for (const part of ['run', 'rest', 'levelL'] as const)
      expect(many[part].slice(0, 100)).toEqual(few[part]);
  });

  it('are never below zero', () => {
    const { run, rest } = draw(4096);
    expect(Math.min(...run, ...rest)).toBeGreaterThanOrEqual(0);
  });
});
