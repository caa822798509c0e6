import { describe, expect, test } from 'vitest';
import { forecastOf, read } from '../helpers/a-forecast.ts';

const figures = (uom: string, ...values: readonly (readonly [time: string, value: number | null])[]) => ({
  uom,
  values: values.map(([validTime, value]) => ({ validTime, value })),
});
const grid = {
  type: 'Feature',
  geometry: {
    type: 'Polygon',
    coordinates: [
      [
        [-5.5, 50],
        [-5.5, 50.2],
        [-5.3, 50.2],
        [-5.3, 50],
        [-5.5, 50],
      ],
    ],
  },
  properties: {
    updateTime: '2026-02-03T05:12:00+00:00',
    validTimes: '2026-02-03T06:00:00+00:00/P1D',
    windSpeed: figures(
      'wmoUnit:km_h-1',
      ['2026-02-03T06:00:00+00:00/PT3H', 18.52],
      ['2026-02-03T09:00:00+00:00/PT9H', 37.04],
    ),
    windDirection: figures('wmoUnit:degree_(angle)', ['2026-02-03T06:00:00+00:00/PT12H', 225]),
    windGust: figures(
      'wmoUnit:km_h-1',
      ['2026-02-03T06:00:00+00:00/PT3H', 27.78],
      ['2026-02-03T09:00:00+00:00/PT9H', null],
    ),
    waveHeight: figures(
      'wmoUnit:m',
      ['2026-02-03T06:00:00+00:00/PT6H', 1.5],
      ['2026-02-03T12:00:00+00:00/PT6H', 2],
    ),
    wavePeriod: figures('nwsUnit:s', ['2026-02-03T06:00:00+00:00/PT12H', 7]),
    weather: {
      values: [
        {
          validTime: '2026-02-03T06:00:00+00:00/PT6H',
          value: [{ coverage: 'slight_chance', weather: 'thunderstorms' }],
        },
        { validTime: '2026-02-03T12:00:00+00:00/PT6H', value: [{ coverage: 'likely', weather: 'rain' }] },
      ],
    },
    hazards: {
      values: [
        { validTime: '2026-02-03T09:00:00+00:00/PT9H', value: [{ phenomenon: 'GL', significance: 'W' }] },
      ],
    },
  },
};
const withLayers = (change: object) =>
  JSON.stringify({ ...grid, properties: { ...grid.properties, ...change } });

describe('a grid point', () => {
  test('becomes a step between each two changes, in knots and UTC, at the middle of its cell', () => {
    const { places, issuedAt } = forecastOf(JSON.stringify(grid), { place: 'Aster' });
    expect(issuedAt).toBe('2026-02-03T05:12:00.000Z');
    expect(places[0]).toMatchObject({ place: 'Aster', at: [50.1, -5.4] });
    expect(
      places[0]?.steps.map(({ from, to, wind, gust, seas, squalls }) => [
        from.slice(11, 13),
        to.slice(11, 13),
        wind,
        gust,
        seas,
        squalls,
      ]),
    ).toEqual([
      ['06', '09', [10, 10], 15, [1.5, 1.5], 'isolated'],
      ['09', '12', [20, 20], null, [1.5, 1.5], 'isolated'],
      ['12', '18', [20, 20], null, [2, 2], null],
    ]);
    expect(places[0]?.steps[0]).toMatchObject({ dir: 225, period: 7 });
  });

  test('has its hazards as headlines, with their hours', () => {
    expect(forecastOf(JSON.stringify(grid)).places[0]?.headlines).toEqual([
      {
        text: 'Gale warning',
        level: 'warning',
        about: 'gale',
        from: '2026-02-03T09:00:00.000Z',
        to: '2026-02-03T18:00:00.000Z',
      },
    ]);
  });

  test('whose waves are one single zero has no sea, which is not a calm', () => {
    const none = { waveHeight: figures('wmoUnit:m', ['2026-02-03T06:00:00+00:00/P8DT6H', 0]) };
    const { places, problems } = forecastOf(withLayers(none));
    expect(places[0]?.steps.every(({ seas, period }) => seas === null && period === null)).toBe(true);
    expect(problems).toContainEqual({ kind: 'no sea here', where: 'waveHeight' });
  });

  test('with a calm among its waves keeps it', () => {
    const calm = {
      waveHeight: figures(
        'wmoUnit:m',
        ['2026-02-03T06:00:00+00:00/PT6H', 0],
        ['2026-02-03T12:00:00+00:00/PT6H', 0.5],
      ),
    };
    expect(forecastOf(withLayers(calm)).places[0]?.steps[0]?.seas).toEqual([0, 0]);
  });

  test.each<[string, object, string]>([
    [
      'a time without its duration',
      { windSpeed: figures('wmoUnit:km_h-1', ['2026-02-03T06:00:00+00:00', 1]) },
      'windSpeed',
    ],
    [
      'times that overlap',
      {
        windSpeed: figures(
          'wmoUnit:km_h-1',
          ['2026-02-03T06:00:00+00:00/PT6H', 1],
          ['2026-02-03T08:00:00+00:00/PT6H', 1],
        ),
      },
      'windSpeed',
    ],
    [
      'a unit not known',
      { waveHeight: figures('wmoUnit:furlong', ['2026-02-03T06:00:00+00:00/PT6H', 1]) },
      'waveHeight.uom',
    ],
    ['an issue time that is none', { updateTime: 'this morning' }, 'updateTime'],
    [
      'a text for a figure',
      {
        windSpeed: {
          uom: 'wmoUnit:km_h-1',
          values: [{ validTime: '2026-02-03T06:00:00+00:00/PT6H', value: '12' }],
        },
      },
      'properties.windSpeed.values.0.value',
    ],
  ])('in trouble: %s', (_, change, where) => {
    expect(read(withLayers(change))).toMatchObject({
      ok: false,
      troubles: [{ kind: 'table not understood', where }],
    });
  });
});
