import { describe, expect, test } from 'vitest';
import { csvTemplate } from '../../source/forecast/csv.ts';
import { forecastOf, read } from '../helpers/a-forecast.ts';

const table = (...lines: readonly string[]) => ['# issued: 2026-02-03T06:00Z', ...lines].join('\n');
const stepsOf = (...lines: readonly string[]) => forecastOf(table(...lines)).places[0]?.steps ?? [];

describe('the table of our own', () => {
  test('as it is handed out can be taken in', () => {
    const forecast = forecastOf(csvTemplate());
    expect(forecast).toMatchObject({
      source: 'csv',
      issuer: 'Harbour office',
      issuedAt: '2026-02-03T06:00:00.000Z',
      notRead: [],
    });
    expect(forecast.places).toMatchObject([
      {
        place: 'Outer sound',
        steps: [
          { wind: [15, 20], dir: 225, gust: 28, seas: [1.2, 1.8], period: 7, pressure: 1012, squalls: null },
          {
            wind: [20, 25],
            dir: 225,
            gust: null,
            seas: [2, 2.5],
            period: null,
            pressure: 1006,
            squalls: 'isolated',
          },
        ],
      },
    ]);
  });

  test('has units in the names of its columns, and an empty cell is not said', () => {
    expect(
      stepsOf('from,wind_ms,seas_ft,gust_kn', '2026-02-03T06:00Z,10,5,', '2026-02-03T12:00Z,,,30'),
    ).toMatchObject([
      {
        to: '2026-02-03T12:00:00.000Z',
        wind: [expect.closeTo(19.4384, 4), expect.closeTo(19.4384, 4)],
        seas: [1.524, 1.524],
        gust: null,
      },
      { wind: null, seas: null, gust: 30 },
    ]);
  });

  test('may have semicolons between and commas in figures, as spreadsheets write it', () => {
    expect(
      stepsOf('from;to;wind_kn;seas_m', '"2026-02-03T06:00Z";"2026-02-03T12:00Z";15;1,5')[0]?.seas,
    ).toEqual([1.5, 1.5]);
  });

  test('is asked for its time of issue where it does not say', () => {
    expect(read('from,wind_kn,seas_m\n2026-02-03T06:00Z,15,1\n')).toEqual({
      ok: true,
      value: { kind: 'asks', asks: [{ what: 'issued' }] },
    });
  });

  test('shows the columns it did not read', () => {
    expect(forecastOf(table('from,wind_kn,rain', '2026-02-03T06:30Z,15,2')).notRead).toEqual([
      { where: 'columns', text: 'rain' },
    ]);
  });
});

describe('a table in trouble', () => {
  test.each<[readonly string[], string]>([
    [['from,wind_kn', '3 Feb,15'], 'row 3, from'],
    [['from,wind_kn', ',15'], 'row 3, from'],
    [['from,wind_kn', '2026-02-03T06:00Z,fresh'], 'row 3, wind_kn'],
    [['from,wind_kn', '2026-02-03T06:00Z,-5'], 'row 3, wind_kn'],
    [['from,wind_kn', '2026-02-03T06:00Z,999'], 'row 3, wind_kn'],
    [['from,wind_furlongs', '2026-02-03T06:00Z,9'], 'row 3, wind_furlongs'],
    [['from,wind_kn,dir_deg', '2026-02-03T06:00Z,9,so'], 'row 3, dir_deg'],
    [['from,wind_kn', '2026-02-03T06:00Z,15,20'], 'row 3'],
    [['from,to,wind_kn', '2026-02-03T06:00Z,2026-02-03T05:00Z,15'], 'row 3'],
    [['from,wind_kn', '2026-02-03T06:00Z,15', '2026-02-03T06:00Z,15'], 'row 3'],
    [['from,wind_kn,wind_kn', '2026-02-03T06:00Z,15,16'], 'row 2'],
    [['from,wind_kn,squalls', '2026-02-03T06:00Z,15,many'], 'row 3, squalls'],
  ])('%j', (lines, where) => {
    expect(read(table(...lines))).toMatchObject({
      ok: false,
      troubles: [{ kind: 'table not understood', where }],
    });
  });

  test('every row in trouble is told, and nothing is taken in', () => {
    const result = read(table('from,wind_kn', 'x,15', '2026-02-03T06:00Z,15', '2026-02-03T12:00Z,y'));
    expect(result.ok ? [] : result.troubles.map((trouble) => 'where' in trouble && trouble.where)).toEqual(
      expect.arrayContaining(['row 3, from', 'row 5, wind_kn']),
    );
  });
});
