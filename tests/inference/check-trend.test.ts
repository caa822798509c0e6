import { describe, expect, it } from 'vitest';
import { trendOf } from '../../source/inference/check-trend.ts';
import { stream } from '../../source/maths/stream.ts';
import { aBoat } from '../helpers/a-boat.ts';

const day = 86_400_000;
const [bank] = aBoat().checks;

/** Volts at dawn, day after day, rounded as a meter shows them. */
function dawns(days: number, name: string, volts: (day: number) => number) {
  const chance = stream(1, name);
  return Array.from({ length: days }, (_, n) => ({
    at: n * day,
    ok: true,
    value: Math.round(100 * (volts(n) + 0.1 * chance.normal())) / 100,
  }));
}

function trendAfter(answers: ReturnType<typeof dawns>, check = bank!, now = answers.at(-1)!.at) {
  const record = { answers, unsettledBy: null, madeSinceArrival: true, lookedAt: now };
  return trendOf(check, record, now);
}

describe('the number a check is answered with', () => {
  it('that sank by itself is told, with the day, what it was and what it is', () => {
    const trend = trendAfter(dawns(80, 'sank', (n) => (n < 60 ? 12.7 : 12.4)));
    expect(trend?.way).toBe('down');
    expect(Math.abs(trend!.at / day - 60)).toBeLessThanOrEqual(5);
    expect(trend!.before).toBeCloseTo(12.7, 1);
    expect(trend!.after).toBeCloseTo(12.4, 1);
  });

  it('is told within ten answers where it sank by twice what it strays, 9 times in 10', () => {
    const told = Array.from({ length: 40 }, (_, year) => {
      const answers = dawns(70, `sank/${year}`, (n) => (n < 60 ? 12.7 : 12.5));
      return trendAfter(answers) !== null;
    });
    expect(told.filter(Boolean).length).toBeGreaterThanOrEqual(36);
  });

  it('that only strays is let be: in a hundred years of mornings, looked at every month, no more than five are ever called a change', () => {
    const called = Array.from({ length: 100 }, (_, year) => {
      const answers = dawns(365, `healthy/${year}`, () => 12.7);
      const months = Array.from({ length: 12 }, (_, month) => answers.slice(0, 30 * (month + 1)));
      return months.some((seen) => trendAfter(seen, { ...bank!, atLeast: undefined }) !== null);
    });
    expect(called.filter(Boolean).length).toBeLessThanOrEqual(5);
  });

  it('that moved away from its one limit is no trouble, and with no limit either way is told', () => {
    const rose = dawns(80, 'rose', (n) => (n < 60 ? 12.4 : 12.8));
    expect(trendAfter(rose)).toBeNull();
    expect(trendAfter(rose, { ...bank!, atLeast: undefined })?.way).toBe('up');
    expect(trendAfter(rose, { ...bank!, atMost: 14 })?.way).toBe('up');
  });

  it('stops being news after a month', () => {
    const sank = dawns(80, 'sank', (n) => (n < 60 ? 12.7 : 12.4));
    expect(trendAfter(sank, bank, 140 * day)).toBeNull();
  });

  it('that is the same for months and then one step lower once is let be; day after day it is told', () => {
    const flat = (days: number, low: number) =>
      Array.from({ length: days }, (_, n) => ({ at: n * day, ok: true, value: n < days - low ? 0.7 : 0.6 }));
    expect(trendAfter(flat(60, 0))).toBeNull();
    expect(trendAfter(flat(61, 1))).toBeNull();
    expect(trendAfter(flat(70, 10))?.way).toBe('down');
  });

  it('of few answers, or none, tells nothing', () => {
    expect(
      trendOf(bank!, { answers: [], unsettledBy: null, madeSinceArrival: true, lookedAt: null }, 0),
    ).toBeNull();
    expect(trendAfter(dawns(5, 'few', (n) => 12.7 - n))).toBeNull();
  });
});
