import { describe, expect, it } from 'vitest';
import { legsMet } from '../../source/words/legs-met.ts';
import type { WeatherDocument } from '../../source/words/weather-document.ts';

const HOUR_MS = 3_600_000;
const from = '2026-03-01T06:00:00Z';
const leg = { nm: 12, courseDeg: 350, lastsHours: 2, forecast: 0 };
const rising = Array.from({ length: 10 }, (_, hour) => 10 + hour);
const weather: WeatherDocument = {
  from,
  limits: { wind: 20, gust: 28, seas: 2, headwind: null, overHours: 3 },
  legs: [
    { ...leg, place: 'Scarva', startsHours: 0 },
    { ...leg, place: null, startsHours: 2 },
  ],
  forecasts: [
    {
      wind: rising,
      windSd: rising.map(() => 12),
      gust: rising.map((knots, hour) => (hour === 3 ? null : knots + 5)),
      dir: rising.map(() => 20),
      seas: rising.map(() => null),
      seasSd: rising.map(() => null),
      period: rising.map(() => null),
      derivedGust: false,
    },
  ],
  departures: Array.from({ length: 9 }, () => [{ leg: 1, what: 'gust' as const, share: 0.25 }]),
};

describe('what each leg meets', () => {
  it('is the hardest of the hours it takes at the usual speed', () => {
    const [first, second] = legsMet(weather, 1);
    expect(first).toMatchObject({ place: 'Scarva', gust: 17, wind: { mean: 12 } });
    expect(first!.from).toBe(Date.parse(from) + HOUR_MS);
    expect(second).toMatchObject({ place: 'leg 2', gust: 19, wind: { mean: 14 } });
  });

  it('never shows wind below nothing, nor seas that nobody said', () => {
    expect(legsMet(weather, 0)[0]!.wind!.low).toBe(0);
    expect(legsMet(weather, 0)[0]!.seas).toBeNull();
  });

  it('a headwind is one within 60 degrees of the bow, across north as well', () => {
    expect(legsMet(weather, 0)[0]!.ahead).toBe(true);
    const away = weather.legs.map((one) => ({ ...one, courseDeg: 310 }));
    expect(legsMet({ ...weather, legs: away }, 0)[0]!.ahead).toBe(false);
  });

  it('says what stands in the way with its limit, and past the end of the forecast', () => {
    const [first, second] = legsMet(weather, 7);
    expect(first!.stands).toBeNull();
    expect(second!.stands).toEqual({ why: 'gusts pass 28 kn', share: 0.25 });
    expect([first!.beyond, second!.beyond]).toEqual([false, true]);
  });

  it('a leg that lies behind her is left out', () => {
    const [first, second] = weather.legs as [(typeof weather.legs)[0], (typeof weather.legs)[0]];
    const under = {
      ...weather,
      legs: [
        { ...first, lastsHours: 0 },
        { ...second, startsHours: 0 },
      ],
    };
    expect(legsMet(under, 0).map(({ place }) => place)).toEqual(['leg 2']);
  });
});
