import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { believe } from '../../source/inference/believe.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { stream } from '../../source/maths/stream.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const DAY = 86_400_000;
const start = Date.parse('2026-01-01T08:00:00Z');
const on = (day: number) => start + day * DAY;
const dip = (day: number, level: number) => anEntry('dip', { fluid: 'gear-oil', level }, on(day));
const hours = (day: number, reading: number) => anEntry('hours', { engine: 'main', reading }, on(day));
const job = (day: number) => anEntry('job', { item: 'gear-oil', text: 'a job' }, on(day));
const boat = aBoat();

/** What is believed of the gear oil; every figure of every belief, and every draw, must be a number. */
function believed(entries: readonly Entry[], day = 30) {
  const condition = conditionAt(boat, entries, on(day));
  const beliefs = believe(boat, condition);
  for (const belief of [...beliefs.fluids.values(), ...beliefs.anodes.values()]) {
    if (!belief) continue;
    expectNumbers(belief);
    const draws = belief.draw(
      64,
      (part) => stream(1, part),
      () => new Float64Array(64).fill(1),
    );
    for (const values of Object.values(draws)) expect(values.every(Number.isFinite)).toBe(true);
  }
  return { oil: beliefs.fluids.get('gear-oil') ?? null, troubles: condition.troubles };
}

function expectNumbers(value: unknown, name = 'belief'): void {
  if (typeof value === 'number') expect(Number.isFinite(value), `${name} is ${value}`).toBe(true);
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) expectNumbers(inner, `${name}.${key}`);
}

const week = [0, 1, 2, 3, 4, 5, 6].map((day) => dip(day, 1.29 - 0.005 * day));

describe('whatever the log holds, what is believed is sensible, and every figure a number', () => {
  it('a meter that goes back is told, and left out of the sums', () => {
    const meter = [hours(0, 1000), hours(2, 1004), hours(3, 940), hours(5, 1008)];
    const { oil, troubles } = believed([...week, ...meter]);
    expect(troubles.map(({ kind }) => kind)).toEqual(['odd reading']);
    expect(oil!.run).toEqual(believed([...week, ...meter.filter((_, i) => i !== 2)]).oil!.run);
  });

  it('two readings at one instant are two readings of one level', () => {
    const { oil } = believed([...week, dip(6, 1.26)], 6);
    const once = believed(week, 6).oil!;
    expect(oil!.level.sd).toBeLessThan(once.level.sd);
    expect(Math.abs(oil!.level.mean - once.level.mean)).toBeLessThan(0.01);
  });

  it('a level no tank can show is told, and left out of the sums', () => {
    const { oil, troubles } = believed([...week, dip(7, 9)]);
    expect(troubles.map(({ kind }) => kind)).toEqual(['odd reading']);
    expect(oil!.level).toEqual(believed(week).oil!.level);
  });

  it('a top-up with no readings tells nothing of the level; with one to the mark it does', () => {
    const topUp = (fields: object) => anEntry('topup', { fluid: 'gear-oil', amount: 0.1, ...fields }, on(1));
    expect(believed([topUp({})]).oil).toBeNull();
    expect(believed([topUp({ share: 1 })], 1).oil!.level.mean).toBeCloseTo(1.3, 2);
  });

  it('no reading at all is not a level', () => {
    expect(believed([]).oil).toBeNull();
    expect(believed([job(1)]).oil).toBeNull();
  });

  it('one reading gives a level, and the losses of the boat file', () => {
    const { oil } = believed([dip(0, 1.25)], 0);
    expect(oil!.level.mean).toBeCloseTo(1.25, 3);
    expect(oil!.leak.tight).toBeCloseTo(0.81, 2);
    expect(oil!.job).toBeNull();
  });

  it('readings all the same are a tight fluid', () => {
    const { oil } = believed(
      week.map((_, day) => dip(day, 1.2)),
      6,
    );
    expect(oil!.leak.tight).toBeGreaterThan(0.85);
    expect(oil!.level.mean).toBeCloseTo(1.2, 2);
  });

  it('a job with nothing after it changed nothing that is known: as likely lower as higher', () => {
    const { oil } = believed([...week, job(7)]);
    expect(oil!.job!.lowerChance).toBeGreaterThan(0.35);
    expect(oil!.job!.lowerChance).toBeLessThan(0.65);
    expect(oil!.job!.ratio.p50).toBeGreaterThan(0.5);
    expect(oil!.job!.ratio.p50).toBeLessThan(1.5);
  });

  it('a job before there is anything to compare with is no news', () => {
    expect(believed([dip(0, 1.25), job(1), dip(2, 1.24)]).oil!.job).toBeNull();
  });

  it('five jobs in a row count as one', () => {
    const after = [9, 10, 11].map((day) => dip(day, 1.25));
    const five = believed([...week, ...[7, 7.1, 7.2, 7.3, 7.4].map(job), ...after]).oil!;
    const one = believed([...week, job(7.4), ...after]).oil!;
    expect([five.run, five.rest, five.job]).toEqual([one.run, one.rest, one.job]);
  });

  it('five jobs with a reading between each are five', () => {
    const entries = [1, 2, 3, 4, 5].flatMap((n) => [
      ...week.map((_, day) => dip(10 * n + day, 1.28 - 0.004 * day)),
      job(10 * n + 7),
    ]);
    const { oil } = believed(entries, 60);
    expect(oil!.job!.at).toBe(on(57));
    expect(oil!.level.mean).toBeGreaterThan(1);
  });

  it('ten years of readings, 40,000 entries, are read in seconds', () => {
    const chance = stream(1, 'ten years');
    const entries: Entry[] = [];
    let run = 1000;
    for (let day = 0; day < 3650; day += 1) {
      run += 2 * chance.uniform();
      entries.push(hours(day, run));
      for (let look = 0; look < 10; look += 1)
        entries.push(dip(day + look / 24, 1.25 + 0.01 * chance.normal()));
    }
    expect(entries.length).toBeGreaterThan(40_000);
    const began = performance.now();
    const { oil } = believed(entries, 3650);
    expect(performance.now() - began).toBeLessThan(15_000);
    expect(oil!.leak.tight).toBeGreaterThan(0.9);
  });
});
