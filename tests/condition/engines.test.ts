import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const start = Date.UTC(2026, 0, 1);

const hours = (days: number, reading: number, swapped?: true) =>
  anEntry('hours', { engine: 'main', reading, ...(swapped && { swapped }) }, start + days * DAY);

function mainEngine(entries: readonly Entry[]) {
  const condition = conditionAt(aBoat(), entries, start + 1000 * DAY);
  return { ...condition.engines.get('main')!, troubles: condition.troubles };
}

describe('engine hours', () => {
  it('are nothing known with no reading, and 0 at any instant', () => {
    const engine = mainEngine([]);
    expect([engine.hours, engine.readAt, engine.hoursAt(start)]).toEqual([null, null, 0]);
    expect(engine.lately).toEqual({ hours: 0, days: 0 });
  });

  it('are those of a single reading before and after it', () => {
    const engine = mainEngine([hours(3, 3412)]);
    expect([0, 3, 9].map((days) => engine.hoursAt(start + days * DAY))).toEqual([3412, 3412, 3412]);
    expect(engine.lately).toEqual({ hours: 0, days: 0 });
  });

  it('go straight from one reading to the next', () => {
    const engine = mainEngine([hours(0, 100), hours(4, 110)]);
    expect([1, 2, 3.5].map((days) => engine.hoursAt(start + days * DAY))).toEqual([102.5, 105, 108.75]);
  });

  it('go on over a new meter from where the old one was last read', () => {
    const engine = mainEngine([hours(0, 3400), hours(2, 3410), hours(3, 7, true), hours(5, 12)]);
    expect(engine.readings.map((reading) => reading.hours)).toEqual([3400, 3410, 3410, 3415]);
    expect(engine.readings.map(({ reading }) => reading)).toEqual([3400, 3410, 7, 12]);
    expect(engine.hoursAt(start + 4 * DAY)).toBe(3412.5);
    expect(engine.troubles).toEqual([]);
  });

  it('leave out a meter that went back, and say so', () => {
    const engine = mainEngine([hours(0, 3400), hours(1, 3410), hours(2, 3401), hours(3, 3412)]);
    expect(engine.hours).toBe(3412);
    expect(engine.readings).toHaveLength(3);
    expect(engine.troubles).toMatchObject([
      { kind: 'odd reading', item: 'main', value: 3401, than: 3410, why: 'meter back' },
    ]);
  });

  it('with two readings at one instant keep both when both can be, else the first with a trouble', () => {
    const both = mainEngine([hours(0, 100), hours(1, 105), hours(1, 106)]);
    expect([both.hours, both.hoursAt(start + DAY), both.troubles]).toEqual([106, 106, []]);
    const one = mainEngine([hours(0, 100), hours(1, 105), hours(1, 104)]);
    expect([one.hours, one.hoursAt(start + DAY)]).toEqual([105, 105]);
    expect(one.troubles).toMatchObject([{ value: 104, than: 105, why: 'meter back' }]);
  });

  it('never fall and never jump, at whatever instants they are asked', () => {
    const readings = fc.array(
      fc.tuple(fc.double({ min: 0.5, max: 5, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })),
      {
        minLength: 1,
        maxLength: 30,
      },
    );
    fc.assert(
      fc.property(readings, fc.array(fc.nat(29)), (steps, swaps) => {
        let day = 0;
        let reading = 50;
        const entries = steps.map(([days, ran], i) => {
          day += days;
          if (swaps.includes(i)) reading = 0;
          reading += ran;
          return hours(day, reading, swaps.includes(i) ? true : undefined);
        });
        const engine = mainEngine(entries);
        let before = engine.hoursAt(start - DAY);
        for (let t = start - DAY; t < start + (day + 1) * DAY; t += HOUR) {
          const now = engine.hoursAt(t);
          expect(now).toBeGreaterThanOrEqual(before);
          // At most 10 h in half a day: 20 in 24, so under 1 an hour.
          expect(now - before).toBeLessThanOrEqual(1);
          before = now;
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('running hours lately', () => {
  it('are those of the last 14 days before the last reading', () => {
    expect(mainEngine([hours(0, 100), hours(10, 130), hours(20, 150), hours(24, 152)]).lately).toEqual({
      // From day 10 to day 24.
      hours: 22,
      days: 14,
    });
  });

  it('begin with the first reading where there are fewer days', () => {
    expect(mainEngine([hours(0, 100), hours(5, 104)]).lately).toEqual({ hours: 4, days: 5 });
  });

  it('leave out the time under way and what was run in it', () => {
    const engine = mainEngine([
      hours(0, 100),
      hours(4, 104),
      anEntry('left', {}, start + 4 * DAY),
      hours(5, 120),
      anEntry('arrived', {}, start + 5 * DAY),
      hours(10, 125),
    ]);
    expect(engine.lately.hours).toBeCloseTo(9, 9);
    expect(engine.lately.days).toBeCloseTo(9, 9);
  });
});
