// Forecast tables as two public sources give them: hourly marine arrays with their units beside them, and grid points of the US National Weather Service with
// ISO 8601 durations (api.weather.gov/gridpoints). The grid points are fixtures whose times are relative to now; they are made absolute here.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { forecastOf, read } from '../helpers/a-forecast.ts';

const folder = new URL('../../../shared/checks/forecasts/', import.meta.url);
const present = existsSync(folder);
const note = present ? '' : ': skipped, not here';
const now = Date.parse('2026-02-03T07:00Z');

/** The text of the file whose name ends so. */
function named(end: string): string {
  const name = readdirSync(folder).find((one) => one.endsWith(end));
  return readFileSync(new URL(name ?? end, folder), 'utf8');
}

/** The fixtures cut their seconds off, so that one value ends a second after the next begins. */
const TEN_SECONDS = 10_000;

/** `date:now -27322 seconds / P8DT6H` and `date:now:hour -14 hours / PT2H` as ISO 8601. */
function absolute(json: string): string {
  return json
    .replace(/date:now(?::hour)? ?([+-]?\d+)? ?(seconds|hours)?/g, (_, count = '0', unit = 'seconds') =>
      new Date(
        Math.round((now + Number(count) * (unit === 'hours' ? 3_600_000 : 1000)) / TEN_SECONDS) * TEN_SECONDS,
      ).toISOString(),
    )
    .replaceAll(' / P', '/P');
}

test.skipIf(!present)(
  `an hourly marine table is read, swell left out (../shared/checks/forecasts${note})`,
  () => {
    const json = named('_hourly_marine_shape.json');
    const forecast = forecastOf(json, {
      now: Date.parse('2026-09-12T12:00Z'),
      issuedAt: Date.parse('2026-09-12T06:00Z'),
    });
    expect(forecast.places[0]).toMatchObject({
      at: [38.96, -9.42],
      steps: [
        {
          from: '2026-09-12T12:00:00.000Z',
          to: '2026-09-12T13:00:00.000Z',
          seas: [1.7, 1.7],
          period: 11,
          wind: null,
        },
        { from: '2026-09-12T13:00:00.000Z', seas: [1.8, 1.8], period: 12 },
      ],
    });
    expect(forecast.notRead.map(({ text }) => text)).toEqual([
      'wave_direction',
      'swell_wave_height',
      'swell_wave_direction',
      'swell_wave_period',
    ]);
  },
);

test.skipIf(!present)(
  `a table of the present alone is no forecast (../shared/checks/forecasts${note})`,
  () => {
    const json = named('_current_wind_units_kn.json');
    expect(read(json)).toMatchObject({ ok: false, troubles: [{ kind: 'foreign file' }] });
  },
);

test.skipIf(!present).each(['nws_gridpoint_GUM_47-48.json', 'nws_gridpoint_MTR_90-105.json'])(
  `%s: every hour has the wind, direction and gust of its layers, and no sea (../shared/checks/forecasts${note})`,
  (name) => {
    const json = absolute(readFileSync(new URL(name, folder), 'utf8'));
    const { properties } = JSON.parse(json) as {
      readonly properties: {
        readonly [layer: string]: {
          readonly values: readonly { readonly validTime: string; readonly value: number }[];
        };
      };
    };
    const forecast = forecastOf(json, { now });
    const [place] = forecast.places;
    expect(place?.steps.length).toBeGreaterThan(60);
    const layers = { windSpeed: 1 / 1.852, windDirection: 1, windGust: 1 / 1.852 } as const;
    for (const [layer, factor] of Object.entries(layers)) {
      const values = properties[layer]?.values ?? [];
      expect(values.length).toBeGreaterThan(5);
      for (const { validTime, value } of values) {
        const from = Date.parse(validTime.slice(0, validTime.indexOf('/')));
        const step = place?.steps.find((one) => Date.parse(one.from) <= from && from < Date.parse(one.to));
        const found = { windSpeed: step?.wind?.[1], windDirection: step?.dir, windGust: step?.gust }[layer];
        expect(found, `${layer} ${validTime}`).toBeCloseTo(value * factor, 6);
      }
    }
    expect(place?.steps.every(({ seas, period }) => seas === null && period === null)).toBe(true);
    expect(forecast.problems).toContainEqual({ kind: 'no sea here', where: 'waveHeight' });
  },
);
