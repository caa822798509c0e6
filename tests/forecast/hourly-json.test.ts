import { describe, expect, test } from 'vitest';
import { forecastOf, read } from '../helpers/a-forecast.ts';

const issuedAt = Date.parse('2026-02-03T06:00Z');
const table = {
  latitude: 50.04,
  longitude: -5.46,
  utc_offset_seconds: 3600,
  hourly_units: {
    time: 'iso8601',
    wind_speed_10m: 'km/h',
    wind_direction_10m: '°',
    wind_gusts_10m: 'km/h',
    wave_height: 'm',
    wave_period: 's',
  },
  hourly: {
    time: ['2026-02-03T08:00', '2026-02-03T09:00', '2026-02-03T10:00'],
    wind_speed_10m: [18.52, 37.04, null],
    wind_direction_10m: [225, 230, null],
    wind_gusts_10m: [27.78, null, null],
    wave_height: [1.5, null, 2],
    wave_period: [6, null, 7],
  },
};
const withHourly = (change: object, units: object = {}) =>
  JSON.stringify({
    ...table,
    hourly: { ...table.hourly, ...change },
    hourly_units: { ...table.hourly_units, ...units },
  });
const stepsOf = (json: string) => forecastOf(json, { issuedAt }).places[0]?.steps ?? [];

describe('a table of hours', () => {
  test('becomes a step an hour, in knots and UTC, with null where it has null', () => {
    const forecast = forecastOf(JSON.stringify(table), { issuedAt, place: 'Aster' });
    expect(forecast).toMatchObject({ source: 'json', issuedAt: '2026-02-03T06:00:00.000Z' });
    expect(forecast.places[0]).toMatchObject({ place: 'Aster', at: [50.04, -5.46] });
    expect(forecast.places[0]?.steps).toMatchObject([
      {
        from: '2026-02-03T07:00:00.000Z',
        to: '2026-02-03T08:00:00.000Z',
        wind: [10, 10],
        dir: 225,
        gust: 15,
        seas: [1.5, 1.5],
        period: 6,
        periodKind: 'mean',
      },
      {
        from: '2026-02-03T08:00:00.000Z',
        wind: [20, 20],
        gust: null,
        seas: null,
        period: null,
        periodKind: null,
      },
      {
        from: '2026-02-03T09:00:00.000Z',
        to: '2026-02-03T10:00:00.000Z',
        wind: null,
        dir: null,
        seas: [2, 2],
        period: 7,
      },
    ]);
  });

  test.each<[string, object, object]>([
    ['seconds since 1970', { time: [1770102000, 1770105600, 1770109200] }, { time: 'unixtime' }],
    [
      'times with their own offset',
      { time: ['2026-02-03T09:00+02:00', '2026-02-03T10:00+02:00', '2026-02-03T11:00+02:00'] },
      {},
    ],
    ['times in UTC', { time: ['2026-02-03T07:00Z', '2026-02-03T08:00Z', '2026-02-03T09:00Z'] }, {}],
  ])('may have %s', (_, hourly, units) => {
    expect(stepsOf(withHourly(hourly, units)).map(({ from }) => from.slice(11, 16))).toEqual([
      '07:00',
      '08:00',
      '09:00',
    ]);
  });

  test.each([
    ['m/s', 5.14444444],
    ['kn', 10],
    ['mp/h', 11.5077945],
  ])('may have its wind in %s', (unit, value) => {
    const [step] = stepsOf(withHourly({ wind_speed_10m: [value, value, value] }, { wind_speed_10m: unit }));
    expect(step?.wind?.[0]).toBeCloseTo(10, 6);
  });

  test('may have its seas in feet', () => {
    expect(stepsOf(withHourly({}, { wave_height: 'ft' }))[0]?.seas?.[1]).toBeCloseTo(0.4572, 9);
  });

  test('is asked for the time of issue, which it does not say', () => {
    expect(read(JSON.stringify(table))).toEqual({
      ok: true,
      value: { kind: 'asks', asks: [{ what: 'issued' }] },
    });
  });

  test('takes no swell for the sea and no wind from higher up, and says what it left', () => {
    const { hourly, ...rest } = table;
    const { wave_height: height, wind_speed_10m: wind, ...others } = hourly;
    const units = { swell_wave_height: 'm', wind_speed_80m: 'km/h' };
    const json = JSON.stringify({
      ...rest,
      hourly_units: { ...table.hourly_units, ...units },
      hourly: { ...others, wind_speed: wind, swell_wave_height: height, wind_speed_80m: wind },
    });
    expect(read(json, { issuedAt })).toMatchObject({
      ok: false,
      troubles: [{ kind: 'table not understood', where: 'hourly.wind_speed' }],
    });
    const forecast = forecastOf(
      withHourly({ swell_wave_height: height, wave_height: [null, null, null] }, units),
      { issuedAt },
    );
    expect(forecast.places[0]?.steps.every(({ seas }) => seas === null)).toBe(true);
    expect(forecast.notRead).toEqual([{ where: 'hourly', text: 'swell_wave_height' }]);
  });

  test('with a sea of no height anywhere has no sea there, which is not a calm', () => {
    const forecast = forecastOf(withHourly({ wave_height: [0, 0, 0], wave_period: [0, 0, 0] }), { issuedAt });
    expect(forecast.places[0]?.steps[0]).toMatchObject({ seas: null, period: null });
    expect(forecast.problems).toContainEqual({ kind: 'no sea here', where: 'hourly' });
  });

  test('of several points becomes a place for each', () => {
    const other = { ...table, latitude: 51 };
    const { places } = forecastOf(JSON.stringify([table, other]), { issuedAt });
    expect(places.map(({ at }) => at?.[0])).toEqual([50.04, 51]);
  });

  test('has a gap where hours are missing: a value holds six hours at most', () => {
    const steps = stepsOf(withHourly({ time: ['2026-02-03T08:00', '2026-02-03T09:00', '2026-02-03T23:00'] }));
    expect(steps.map(({ to }) => to.slice(0, 13))).toEqual([
      '2026-02-03T08',
      '2026-02-03T14',
      '2026-02-04T04',
    ]);
  });
});

describe('a table that cannot be taken', () => {
  test.each<[string, object, object, string]>([
    ['a unit not known', {}, { wave_height: 'fathoms' }, 'hourly.wave_height'],
    ['no unit', {}, { wave_height: '' }, 'hourly.wave_height'],
    ['columns of unlike length', { wave_height: [1, 2] }, {}, 'hourly.wave_height'],
    ['a text for a figure', { wave_height: ['1', '2', '3'] }, {}, 'hourly.wave_height'],
    ['a height below zero', { wave_height: [-1, 1, 1] }, {}, 'hourly.wave_height'],
    ['a wind of no storm', { wind_speed_10m: [9999, 1, 1] }, {}, 'hourly.wind_speed_10m'],
    [
      'times that run back',
      { time: ['2026-02-03T08:00', '2026-02-03T07:00', '2026-02-03T10:00'] },
      {},
      'hourly.time[1]',
    ],
    [
      'a day that does not exist',
      { time: ['2026-02-30T08:00', '2026-03-03T07:00', '2026-03-03T10:00'] },
      {},
      'hourly.time[0]',
    ],
    ['no times', { time: [] }, {}, 'hourly.time'],
  ])('%s', (_, hourly, units, where) => {
    expect(read(withHourly(hourly, units), { issuedAt })).toMatchObject({
      ok: false,
      troubles: [{ kind: 'table not understood', where }],
    });
  });

  test('local times without their offset are not guessed at', () => {
    const { utc_offset_seconds: _, ...rest } = table;
    expect(read(JSON.stringify(rest), { issuedAt })).toMatchObject({
      ok: false,
      troubles: [{ where: 'hourly.time[0]', expected: expect.stringContaining('utc_offset_seconds') }],
    });
  });
});
