import { describe, expect, it } from 'vitest';
import type { Step } from '../../source/forecast/forecast.ts';
import { normalQuantile } from '../../source/maths/normal-quantile.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { judged } from '../helpers/beliefs.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const at = Date.parse('2026-03-01T06:00:00Z');
const hour = (count: number) => at + count * 3_600_000;
const certain = { atIssue: 0.001, perDay: 0 };
const surely = { wind: certain, seas: certain, direction: certain };

interface Stands {
  readonly wind?: number;
  readonly seas?: number;
  readonly sectors?: { from: number; to: number; wind?: number; seas?: number }[];
}

/** From which hour on it is no place to stay, and why; null where the forecast shows none. */
function untenable(
  stands: Stands,
  steps: readonly (Partial<Step> & { hours: number })[],
  { forecastError = surely, place = '' }: { forecastError?: { wind: typeof certain }; place?: string } = {},
) {
  const boat = aBoat({
    ...{ checks: [], anchorage: 'bight', limits: { wind: false, seas: false, forecastError } },
    anchorages: [{ id: 'bight', name: 'Bight', at: [41.2, -30.4], sectors: [], ...stands }],
    passages: [{ ...sandpiper.passages[0]!, shelter: false }],
  });
  const forecast = steadyForecast(at, steps);
  const places = forecast.places.map((one) => ({ ...one, place }));
  return judged({ boat, at, forecast: { ...forecast, places }, simulations: 1024 }).staying;
}

describe('an anchorage is untenable from the first hour', () => {
  it('at which wind or seas are over what it stands', () => {
    const steps = [{ hours: 12 }, { hours: 12, wind: [30, 30] as [number, number] }, { hours: 24 }];
    expect(untenable({ wind: 25 }, steps)).toMatchObject({ until: hour(12), why: { what: 'wind' } });
    expect(untenable({ wind: 31 }, steps)).toBeNull();
    const high = [{ hours: 5 }, { hours: 24, seas: [1.6, 1.6] as [number, number] }];
    expect(untenable({ seas: 1.5 }, high)).toMatchObject({ until: hour(5), why: { what: 'seas' } });
  });

  it('in more than one passage in ten, no sooner', () => {
    const error = { wind: { atIssue: 4, perDay: 0 } };
    const tenth = 30 - 4 * normalQuantile(0.9);
    const from = (wind: number) =>
      untenable({ wind: 30 }, [{ hours: 24, wind: [wind, wind] }], { forecastError: error });
    expect(from(tenth + 0.8)?.until).toBe(hour(0));
    expect(from(tenth - 4)).toBeNull();
  });

  it('by the sector the wind comes from, more or less than it stands elsewhere', () => {
    const sectors = [
      { from: 300, to: 60, wind: 40 },
      { from: 120, to: 240, wind: 15, seas: 0.5 },
    ];
    const from = (dir: number | null, kn: number) =>
      untenable({ wind: 25, seas: 1.5, sectors }, [{ hours: 24, dir, wind: [kn, kn] }]);
    expect([from(0, 35), from(0, 41)?.why.what]).toEqual([null, 'wind']);
    expect([from(90, 24), from(90, 26)?.why.what]).toEqual([null, 'wind']);
    expect(from(180, 16)?.why.what).toBe('wind');
    expect(from(180, 10)?.why.what).toBe('seas');
    expect(from(null, 16)?.why.what).toBe('wind');
  });

  it('whether or not the forecast speaks of the passage, and with none planned', () => {
    const steps = [{ hours: 5 }, { hours: 24, wind: [40, 40] as [number, number] }];
    expect(untenable({ wind: 25 }, steps, { place: 'bight' })?.until).toBe(hour(5));
    expect(untenable({ wind: 25 }, steps, { place: 'elsewhere' })).toBeNull();
    const boat = aBoat({
      ...{ checks: [], anchorage: 'bight', passage: undefined, passages: [] },
      anchorages: [{ id: 'bight', name: 'Bight', at: [41.2, -30.4], wind: 25 }],
    });
    const { staying } = judged({ boat, at, forecast: steadyForecast(at, steps), simulations: 1024 });
    expect(staying?.until).toBe(hour(5));
  });
});
