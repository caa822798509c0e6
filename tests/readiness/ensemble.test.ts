import { describe, expect, it } from 'vitest';
import type { Boat } from '../../source/boat/boat.ts';
import type { Forecast, Member } from '../../source/forecast/forecast.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { judged } from '../helpers/beliefs.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const at = Date.parse('2026-03-01T06:00:00Z');
const count = 4096;
const hours = 60;
const leg = { from: [41.2, -30.4] as [number, number], to: [41.6, -30.4] as [number, number], nm: 24 };
const hop = { ...sandpiper.passages[0]!, legs: [leg], speed: { mean: 6, sd: 0 }, reserveDays: 0 };
const limits = { wind: 16, gust: 26, seas: 1.1, headwind: 12 };
const half = {
  wind: { atIssue: 1.25, perDay: 0.4 },
  direction: { atIssue: 6, perDay: 2.5 },
  seas: { atIssue: 0.06, perDay: 0.025 },
};

/** A quiet day everywhere, hour by hour, with these members beside it. */
function withMembers(members: readonly Partial<Member>[]): Forecast {
  const plain = steadyForecast(
    at,
    Array.from({ length: hours }, (_, hour) => ({
      hours: 1,
      wind: [11 + hour / 12, 11 + hour / 12] as const,
    })),
  );
  const [place] = plain.places;
  const numbered = members.map((own, member) => ({ member, ...own }));
  return { ...plain, places: [numbered.length === 0 ? place! : { ...place!, members: numbered }] };
}

const ofSteps = (forecast: Forecast): Partial<Member> => {
  const { steps } = forecast.places[0]!;
  return {
    wind: steps.map(({ wind }) => wind![0]),
    dir: steps.map(({ dir }) => dir),
    gust: steps.map(({ gust }) => gust),
    seas: steps.map(({ seas }) => seas![0]),
    period: steps.map(({ period }) => period),
  };
};
const always = (figure: number | null) => Array.from({ length: hours }, () => figure);

function scores(forecast: Forecast, more: Partial<Boat['limits']> = {}): readonly number[] {
  const boat = aBoat({ checks: [], passages: [hop], limits: { ...limits, ...more } });
  return judged({ boat, at, forecast, simulations: count }).curve.map(({ weather }) => weather!);
}

describe('the weather of an ensemble', () => {
  it.each([2, 4, 5, 21])('of %s members all alike is the forecast with half its error', (members) => {
    const plain = withMembers([]);
    const alike = Array.from({ length: members }, () => ofSteps(plain));
    const wanted = scores(plain, { forecastError: half });
    expect(scores(withMembers(alike))).toEqual(wanted);
    expect(scores(plain)).not.toEqual(wanted);
    expect(Math.max(...wanted) - Math.min(...wanted)).toBeGreaterThan(20);
  });

  it('one member in four over every limit fails the passages that meet it: one in four', () => {
    const quiet = { wind: always(6), gust: always(8), seas: always(0.3) };
    const members = [quiet, quiet, quiet, { ...quiet, wind: always(45), gust: always(60) }];
    for (const score of scores(withMembers(members)).slice(0, 40)) expect(score).toBe(75);
    for (const score of scores(withMembers(members.slice(0, 3))).slice(0, 40)) expect(score).toBe(100);
  });

  it('a member that says no wind at an hour bars that hour for its passages alone', () => {
    const quiet = { wind: always(6), gust: always(8), seas: always(0.3) };
    const silent = { ...quiet, wind: always(6).map((wind, hour) => (hour < 10 ? null : wind)) };
    const [now, , , , later] = scores(withMembers([quiet, silent])).filter((_, hour) => hour % 5 === 0);
    expect([now, later]).toEqual([50, 100]);
  });

  it('has the gust of its own wind where it says none, and the seas of the forecast with all their error', () => {
    const wind = { wind: always(14) };
    const gusts = withMembers([wind, wind]);
    expect(scores(gusts, { gust: 14 * 1.3 + 0.01 })[0]).toBeLessThan(60);
    expect(scores(gusts, { gust: 14 + 0.01 })[0]).toBeLessThan(5);
    const seas = { wind: false as const, gust: undefined, headwind: undefined, seas: 1 };
    expect(scores(gusts, seas)).toEqual(scores(withMembers([]), seas));
  });

  it('where she lies, too, is met by each passage in its own member', () => {
    const quiet = { wind: always(6), gust: always(8), seas: always(0.3) };
    const hard = { ...quiet, wind: always(6).map((wind, hour) => (hour < 20 ? wind : 50)) };
    const cove = { id: 'cove', name: 'Cove', at: leg.from, sectors: [], wind: 30 };
    const staying = (members: readonly Partial<Member>[]) => {
      const boat = aBoat({ checks: [], passages: [hop], limits, anchorages: [cove], anchorage: 'cove' });
      return judged({ boat, at, forecast: withMembers(members), simulations: count }).staying;
    };
    expect(staying([quiet, quiet, quiet, hard])!.until).toBe(at + 20 * 3_600_000);
    expect(staying([...Array.from({ length: 19 }, () => quiet), hard])).toBeNull();
  });
});
