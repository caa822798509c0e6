import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { steadyReadings } from '../../source/condition/meter.ts';
import { anEntry } from '../helpers/an-entry.ts';

const DAY = 86_400_000;
const start = Date.UTC(2026, 0, 1);

/** Readings a day apart unless said otherwise. */
function meter(readings: readonly number[], days = (i: number) => i) {
  return readings.map((reading, i) => {
    const at = start + days(i) * DAY;
    return { at, order: i, entry: anEntry('hours', { engine: 'main', reading }, at) };
  });
}

function kept(readings: readonly number[], days?: (i: number) => number): readonly number[] {
  return steadyReadings(meter(readings, days)).kept.map(({ entry }) => entry.reading);
}

describe('the readings of one meter', () => {
  it('are all kept while none goes back and none outruns the clock', () => {
    expect(kept([100, 100, 101.5, 125])).toEqual([100, 100, 101.5, 125]);
  });

  it('lose the slip that most others contradict, wherever it stands', () => {
    expect(kept([3411, 3412, 34126, 3413, 3414])).toEqual([3411, 3412, 3413, 3414]);
    expect(kept([3411, 3412, 341.2, 3413, 3414])).toEqual([3411, 3412, 3413, 3414]);
    expect(kept([34126, 3412, 3413])).toEqual([3412, 3413]);
    expect(kept([341.2, 3412, 3413])).toEqual([3412, 3413]);
    expect(kept([3411, 3412, 34126])).toEqual([3411, 3412]);
  });

  it('believe the earlier of two until a third settles it', () => {
    expect(kept([3400, 3421, 3413])).toEqual([3400, 3421]);
    expect(kept([3400, 3421, 3413, 3414])).toEqual([3400, 3413, 3414]);
  });

  it('say what each left out contradicts: the one before, else the one after', () => {
    const whys = (readings: readonly number[]) =>
      steadyReadings(meter(readings)).odd.map((odd) =>
        odd.kind === 'odd reading' ? [odd.value, odd.why, odd.than, odd.unit] : odd,
      );
    expect(whys([3412, 3410])).toEqual([[3410, 'meter back', 3412, 'h']]);
    expect(whys([3412, 34126])).toEqual([[34126, 'meter leapt', 3412, 'h']]);
    expect(whys([3400, 3421, 3413, 3414])).toEqual([[3421, 'meter back', 3413, 'h']]);
    expect(whys([34126, 3412, 3413])).toEqual([[34126, 'meter back', 3412, 'h']]);
    expect(whys([341.2, 3412, 3413])).toEqual([[341.2, 'meter leapt', 3412, 'h']]);
  });

  it('have a day of room for those entered by date alone, and not more', () => {
    expect(kept([100, 120], () => 0)).toEqual([100, 120]);
    expect(kept([100, 125], () => 0)).toEqual([100]);
  });

  it('of a new meter nobody noted go with the longer run', () => {
    expect(kept([900, 901, 902, 0, 1])).toEqual([900, 901, 902]);
    expect(kept([900, 901, 0, 1, 2])).toEqual([0, 1, 2]);
  });

  it('survive a long run of slips in their middle', () => {
    const good = Array.from({ length: 200 }, (_, i) => 3000 + i);
    const slips = Array.from({ length: 60 }, (_, i) => 30_000 + i);
    const readings = [...good.slice(0, 100), ...slips, ...good.slice(100)];
    expect(kept(readings)).toEqual(good);
  });

  it('are each kept or told as odd, and those kept can all be true, whatever was typed', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 120 }), (readings) => {
        const { kept: steady, odd } = steadyReadings(meter(readings));
        expect(steady.length + odd.length).toBe(readings.length);
        steady.slice(1).forEach((reading, i) => {
          const ran = reading.entry.reading - steady[i]!.entry.reading;
          expect(ran).toBeGreaterThanOrEqual(0);
          expect(ran).toBeLessThanOrEqual((reading.at - steady[i]!.at) / 3_600_000 + 24);
        });
      }),
    );
  });

  it('lose exactly the one reading spoilt in a true run of ten or more', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.1, max: 20, noNaN: true }), { minLength: 10, maxLength: 60 }),
        fc.nat(),
        fc.boolean(),
        (steps, where, tenfold) => {
          let hours = 1000;
          const truth = steps.map((step) => {
            hours += step;
            return hours;
          });
          const spoilt = where % truth.length;
          const typed = truth.with(spoilt, truth[spoilt]! * (tenfold ? 10 : 0.1));
          expect(kept(typed)).toEqual(truth.toSpliced(spoilt, 1));
        },
      ),
    );
  });
});
