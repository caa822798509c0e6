import { describe, expect, it } from 'vitest';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { certainFluid, judged } from '../helpers/beliefs.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const at = Date.parse('2026-03-01T06:00:00Z');
const legs = [
  { from: [41.2, -30.4] as [number, number], to: [41.4, -30.4] as [number, number], nm: 12, place: 'Scarva' },
  { from: [41.4, -30.4] as [number, number], to: [41.6, -30.4] as [number, number], nm: 18, place: 'Otter' },
];
const passage = { ...sandpiper.passages[0]!, legs, speed: { mean: 6, sd: 0 } };
const boat = aBoat({
  fluids: [{ ...sandpiper.fluids[2]!, vary: 0 }],
  anodes: [],
  checks: [],
  passages: [passage],
  limits: { wind: false, seas: 2, gust: 30 },
});

function shown(places: readonly { place: string; gust: number; seas?: null }[]) {
  const everywhere = steadyForecast(at, [{ hours: 72 }]);
  const [{ steps }] = everywhere.places as [(typeof everywhere.places)[number]];
  const forecast = steadyForecast(at, [{ hours: 72 }], {
    places: places.map(({ place, gust, seas }) => ({
      place,
      headlines: [],
      steps: steps.map((step) => ({ ...step, gust, ...(seas === null ? { seas } : {}) })),
    })),
  });
  return judged({ boat, at, fluids: { water: certainFluid(300, 0, 0) }, forecast }).weather!;
}

describe('the weather as it is shown', () => {
  it('says when each leg is sailed at the usual speed', () => {
    const weather = shown([{ place: '', gust: 14 }]);
    expect(weather.legs).toMatchObject([
      { place: 'Scarva', startsHours: 0, lastsHours: 2, nm: 12 },
      { place: 'Otter', startsHours: 2, lastsHours: 3, nm: 18 },
    ]);
  });

  it('legs with one weather share it, legs with another have their own', () => {
    expect(shown([{ place: '', gust: 14 }]).forecasts).toHaveLength(1);
    const two = shown([
      { place: 'Scarva', gust: 14 },
      { place: 'Otter', gust: 24 },
    ]);
    expect(two.legs.map(({ forecast }) => two.forecasts[forecast]!.gust[0])).toEqual([14, 24]);
  });

  it('names for every departure the leg that stands in the way, and how often', () => {
    const weather = shown([
      { place: 'Scarva', gust: 14 },
      { place: 'Otter', gust: 60 },
    ]);
    expect(weather.departures[0]).toEqual([{ leg: 1, hindrance: 'gust', share: 1 }]);
  });

  it('what is not said is not calm: it stands in the way, and has no figure', () => {
    const weather = shown([
      { place: 'Scarva', gust: 14, seas: null },
      { place: 'Otter', gust: 14 },
    ]);
    expect(weather.departures[0]).toEqual([{ leg: 0, hindrance: 'not said', share: 1 }]);
    expect(weather.forecasts[weather.legs[0]!.forecast]!.seas[0]).toBeNaN();
  });
});
