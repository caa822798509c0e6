import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../source/maths/normal.ts';
import { stream } from '../../source/maths/stream.ts';
import { drawPaths } from '../../source/readiness/weather-paths.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { certainFluid, judged } from '../helpers/beliefs.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const at = Date.parse('2026-03-01T06:00:00Z');
const count = 4096;
const fourErrors = (p: number) => 4.5 * Math.sqrt((p * (1 - p)) / count) + 1 / count;
const leg = { from: [41.2, -30.4] as [number, number], to: [41.25, -30.4] as [number, number], nm: 3 };
const hop = { ...sandpiper.passages[0]!, legs: [leg], speed: { mean: 6, sd: 0 }, reserveDays: 0 };
const steady = {
  wind: { atIssue: 2.5, perDay: 0 },
  seas: { atIssue: 0.12, perDay: 0 },
  direction: { atIssue: 12, perDay: 0 },
};
const offLimits = { wind: false as const, seas: false as const };

/** Weather chances, 0..1, for every departure of a short hop by a boat that lacks nothing. */
function weatherOf(
  forecast: Parameters<typeof steadyForecast>[1],
  limits: object,
  passage: object = {},
): readonly number[] {
  const boat = aBoat({
    fluids: [{ ...sandpiper.fluids[2]!, vary: 0 }],
    anodes: [],
    checks: [],
    passages: [{ ...hop, ...passage }],
    limits: { ...offLimits, ...limits },
  });
  const fluids = { water: certainFluid(300, 0, 0) };
  return judged({ boat, at, fluids, forecast: steadyForecast(at, forecast) }).curve.map(
    ({ weather }) => weather! / 100,
  );
}

describe('the simulated weather', () => {
  const hours = 37;
  const { wind, seas } = drawPaths(count, hours, (name) => stream(1, name));
  const correlation = (a: Float32Array, from: number, b: Float32Array, to: number) => {
    let sum = 0;
    for (let i = 0; i < count; i += 1) sum += a[from * count + i]! * b[to * count + i]!;
    return sum / count;
  };

  it('forgets itself: errors 18 hours apart are correlated 1/e, 36 hours apart 1/e^2', () => {
    for (const [apart, expected] of [
      [0, 1],
      [18, Math.exp(-1)],
      [36, Math.exp(-2)],
    ] as const)
      expect(Math.abs(correlation(wind, 0, wind, apart) - expected)).toBeLessThan(4.5 * Math.sqrt(2 / count));
  });

  it('moves the seas with the wind: their errors are correlated 0.7', () => {
    expect(Math.abs(correlation(wind, 20, seas, 20) - 0.7)).toBeLessThan(4.5 * Math.sqrt(2 / count));
  });

  it.each([
    {
      what: 'gust',
      step: { gust: 25 },
      limit: { gust: 30 },
      sd: (days: number) => 1.3 * (2.5 + 0.8 * days),
      over: 5,
    },
    {
      what: 'seas',
      step: { seas: [1.8, 1.8] },
      limit: { seas: 2 },
      sd: (days: number) => (0.12 + 0.05 * days) * 1.8,
      over: 0.2,
    },
    {
      what: 'wind far over',
      step: { wind: [18, 18], gust: 0 },
      limit: { wind: 17 },
      sd: (days: number) => 2.5 + 0.8 * days,
      over: 4,
    },
    {
      what: 'a range, a quarter of its width more',
      step: { seas: [1, 2] },
      limit: { seas: 2 },
      sd: (days: number) => (0.12 + 0.05 * days) * 1.5 + 0.25,
      over: 0.5,
    },
  ] as const)(
    'one hour, one limit ($what): the chance is that of the normal distribution',
    ({ step, limit, sd, over }) => {
      const chances = weatherOf([{ hours: 72, ...(step as object) }], limit);
      for (const hour of [0, 24, 60]) {
        const expected = normalCdf(over / sd(hour / 24));
        expect(
          Math.abs(chances[hour]! - expected),
          `at ${hour}: ${chances[hour]} against ${expected}`,
        ).toBeLessThan(fourErrors(expected));
      }
    },
  );

  it('takes a gust not said from the upper wind, 1.3 times', () => {
    const [chance] = weatherOf([{ hours: 24, wind: [16, 20], gust: null }], { gust: 28 });
    const expected = normalCdf((28 - 1.3 * 20) / (1.3 * (2.5 + 0.25 * 4)));
    expect(Math.abs(chance! - expected)).toBeLessThan(fourErrors(expected));
  });

  it('gives a flat score for a flat forecast whose errors do not grow, and a falling one where they do', () => {
    const flat = [{ hours: 96, gust: 26, seas: [1.6, 1.6] as [number, number] }];
    const same = weatherOf(flat, { gust: 30, seas: 2, forecastError: steady });
    for (const chance of same.slice(0, 80))
      expect(Math.abs(chance - same[0]!)).toBeLessThan(1.5 * fourErrors(same[0]!));
    const growing = weatherOf(flat, { gust: 30, seas: 2 });
    for (let hour = 12; hour < 80; hour += 12)
      expect(growing[hour]!).toBeLessThan(growing[hour - 12]! + fourErrors(growing[hour]!));
    expect(growing[72]!).toBeLessThan(growing[0]! - 0.1);
  });
});

describe('what the forecast does not say is never taken for calm', () => {
  it.each([
    ['wind', { wind: null, gust: null }, { wind: 22 }],
    ['seas', { seas: null }, { seas: 2 }],
  ] as const)('%s not said bars that hour', (_, missing, limits) => {
    const chances = weatherOf([{ hours: 6 }, { hours: 6, ...missing }, { hours: 12 }], limits);
    expect(chances.slice(0, 5).every((chance) => chance > 0.95)).toBe(true);
    expect(chances.slice(6, 12)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(chances[12]!).toBeGreaterThan(0.95);
  });

  it('nor is a wind that is judged only ahead, in gusts or from a sector', () => {
    const silent = [{ hours: 24, wind: null, gust: null }];
    const northerly = { legs: [{ ...leg, sectors: [{ from: 300, to: 60, wind: 12 }] }] };
    expect(weatherOf(silent, {})[0]).toBe(1);
    expect(weatherOf(silent, { gust: 30 })[0]).toBe(0);
    expect(weatherOf(silent, { headwind: 15 })[0]).toBe(0);
    expect(weatherOf(silent, {}, northerly)[0]).toBe(0);
    expect(weatherOf([{ hours: 24, seas: null }], { periodPerMetre: 3 })[0]).toBe(0);
  });

  it('nor is a direction: the wind is then taken to come from ahead', () => {
    const [known] = weatherOf([{ hours: 24, wind: [16, 16], dir: 180 }], { headwind: 9 });
    const [unknown] = weatherOf([{ hours: 24, wind: [16, 16], dir: null }], { headwind: 9 });
    expect([known! > 0.9, unknown! < 0.6]).toEqual([true, true]);
  });

  it('a second direction counts as the first does, and one from anywhere as from ahead', () => {
    const chance = (otherDirs: (number | null)[]) =>
      weatherOf([{ hours: 24, wind: [16, 16], dir: 180, otherDirs }], { headwind: 9 })[0]!;
    const ahead = weatherOf([{ hours: 24, wind: [16, 16], dir: 0 }], { headwind: 9 })[0]!;
    expect(chance([])).toBeGreaterThan(0.9);
    expect(chance([170])).toBeGreaterThan(0.9);
    expect([chance([0]), chance([null])].map((one) => Math.abs(one - ahead) < 0.05)).toEqual([true, true]);
  });

  it('and a passage past the end of the forecast does not pass, but for what need not be covered', () => {
    const long = { legs: [{ ...leg, nm: 60 }] };
    const chances = weatherOf([{ hours: 24 }], { wind: 22 }, long);
    expect([chances[14]! > 0.9, chances[15]]).toEqual([true, 0]);
    const partly = weatherOf([{ hours: 24 }], { wind: 22, forecastMustCover: 4 }, long);
    expect([partly[20]! > 0.9, partly[21]]).toEqual([true, 0]);
  });

  it('though what is known beyond the hours that must be covered counts', () => {
    const long = { legs: [{ ...leg, nm: 60 }] };
    const limits = { wind: 22, seas: 2, forecastMustCover: 4 };
    const gale = weatherOf([{ hours: 6 }, { hours: 18, wind: [40, 40] }], limits, long);
    const high = weatherOf([{ hours: 6 }, { hours: 18, wind: null, seas: [4, 4] }], limits, long);
    const silent = weatherOf([{ hours: 6 }, { hours: 18, wind: null, seas: null }], limits, long);
    expect([gale[0], high[0], silent[0]! > 0.9]).toEqual([0, 0, true]);
  });
});

describe('what stands in the way is called by its name', () => {
  const errors = { wind: { atIssue: 0.1, perDay: 0 }, direction: { atIssue: 1, perDay: 0 } };
  const edge = (wind: number, dir: number, more: object = {}) => {
    const boat = aBoat({
      ...{ checks: [], passages: [{ ...hop, legs: [{ ...leg, nm: 60 }] }] },
      limits: { wind: 24, headwind: 12, seas: false, overHours: 2, forecastError: errors, ...more },
    });
    const forecast = steadyForecast(at, [{ hours: 72, wind: [wind, wind], gust: 0, dir }]);
    const reason = judged({ boat, at, forecast }).reasons.find((one) => one.reason === 'under the score');
    return reason?.reason === 'under the score' && reason.edge !== null && 'hindrance' in reason.edge
      ? [reason.edge.hindrance, reason.edge.limit]
      : null;
  };

  it('headwind over its limit for too long, and wind over its own', () => {
    expect(edge(14, 0)).toEqual(['headwind', 12]);
    expect(edge(14, 180)).toBeNull();
    expect(edge(26, 180)).toEqual(['wind', 24]);
  });
});

describe('limits', () => {
  it('a squall line, a gale warning, and a small-craft warning that is to stop her, bar their hours', () => {
    const forecast = (headlines: object[], step: object) => ({
      ...steadyForecast(at, [{ hours: 48, ...step }]),
      places: steadyForecast(at, [{ hours: 48, ...step }]).places.map((place) => ({
        ...place,
        headlines: headlines as never,
      })),
    });
    const boat = (limits: object) =>
      aBoat({ passages: [hop], checks: [], limits: { wind: 22, seas: 2, ...limits } });
    const first = (limits: object, headlines: object[], step: object = {}) =>
      judged({ boat: boat(limits), at, forecast: forecast(headlines, step) }).curve[0]!.weather!;
    const headline = (level: string, about: string) => [{ text: 'x', level, about, from: null, to: null }];
    expect(first({}, [])).toBeGreaterThan(95);
    expect(first({}, [], { squalls: 'line' })).toBe(0);
    expect(first({}, headline('warning', 'gale'))).toBe(0);
    expect(first({}, headline('advisory', 'small craft'))).toBeGreaterThan(95);
    expect(first({ smallCraft: 'stop' }, headline('advisory', 'small craft'))).toBe(0);
  });

  it('wind a little over its limit passes for as long as it may, and no longer', () => {
    const over = [{ hours: 48, wind: [20, 20] as [number, number], gust: 0 }];
    const hours = (nm: number) =>
      weatherOf(
        over,
        { wind: 17.5, forecastError: { wind: { atIssue: 0.2, perDay: 0 } } },
        { legs: [{ ...leg, nm }] },
      )[0]!;
    expect([hours(18), hours(24)]).toEqual([1, 0]);
  });

  it('a sector goes clockwise from its beginning to its end, 0 to 360 all the way round', () => {
    const from = (dir: number, sector: object) =>
      weatherOf(
        [{ hours: 24, wind: [16, 16], dir }],
        { forecastError: { direction: { atIssue: 0.1, perDay: 0 } } },
        { legs: [{ ...leg, sectors: [{ wind: 4, ...sector }] }] },
      )[0]! < 0.1;
    const around = [0, 90, 180, 270].map((dir) => from(dir, { from: 0, to: 360 }));
    expect(around).toEqual([true, true, true, true]);
    expect([350, 10, 300, 60].map((dir) => from(dir, { from: 320, to: 40 }))).toEqual([
      ...[true, true],
      ...[false, false],
    ]);
  });

  it('an arrival in the dark does not pass where daylight is asked for', () => {
    const chances = weatherOf([{ hours: 48 }], { daylight: { afterSunrise: 1, beforeSunset: 1 } });
    const open = chances
      .map((chance, hour) => [hour, chance] as const)
      .filter(([, chance]) => chance > 0.5)
      .map(([hour]) => hour);
    // 1 March at 41 N 30 W: the sun is up from about 8:40 to 19:50 UTC; arrivals half an hour after a departure counted from 6:00.
    expect([open[0], open.find((hour) => hour > 12)]).toEqual([4, 28]);
    expect(chances[20]).toBe(0);
  });

  it('but under a sun that does not set every arrival is in daylight, whatever the margins', () => {
    const north = { from: [75, 20] as [number, number], to: [75.05, 20] as [number, number], nm: 3 };
    const summer = Date.parse('2026-06-18T06:00:00Z');
    const boat = aBoat({
      ...{ checks: [], passages: [{ ...hop, legs: [north] }] },
      limits: { ...offLimits, daylight: { afterSunrise: 2, beforeSunset: 2 } },
    });
    const { curve } = judged({ boat, at: summer, forecast: steadyForecast(summer, [{ hours: 72 }]) });
    expect(curve.slice(0, 70).every(({ weather }) => weather === 100)).toBe(true);
  });
});
