import { describe, expect, test } from 'vitest';
import { placeFor, weatherAt } from '../../source/forecast/at.ts';
import type { Headline } from '../../source/forecast/forecast.ts';
import { aForecast, aStep } from '../helpers/a-forecast.ts';

const gale: Headline = {
  text: 'GALE WARNING',
  level: 'warning',
  about: 'gale',
  from: '2026-02-03T12:00:00.000Z',
  to: '2026-02-03T18:00:00.000Z',
};
const aster = {
  place: 'Aster Bank',
  headlines: [gale, { ...gale, about: 'small craft' as const, from: null, to: null }],
  steps: [
    aStep('2026-02-03T06:00:00.000Z', '2026-02-03T12:00:00.000Z'),
    aStep('2026-02-03T12:00:00.000Z', '2026-02-03T18:00:00.000Z', {
      wind: [30, 40],
      gust: null,
      otherDirs: [270, null],
    }),
    aStep('2026-02-04T00:00:00.000Z', '2026-02-04T06:00:00.000Z', {
      wind: null,
      gust: null,
      seas: null,
      dir: null,
      period: null,
    }),
  ],
};
const forecast = aForecast([aster]);
const at = (time: string) => weatherAt(forecast, { place: 'aster  bank' }, Date.parse(time));

describe('the weather at an instant', () => {
  test('is that of the step it lies in: from its beginning on, to just before its end', () => {
    expect(at('2026-02-03T06:00Z')).toMatchObject({
      wind: [15, 20],
      dir: 225,
      gust: 26,
      derivedGust: false,
      seas: [1, 1.5],
    });
    expect(at('2026-02-03T11:59:59.999Z')?.wind).toEqual([15, 20]);
    expect(at('2026-02-03T12:00Z')).toMatchObject({ wind: [30, 40], otherDirs: [270, null] });
  });

  test('is unknown before the first step, in a gap, and from the end on', () => {
    for (const time of [
      '2026-02-03T05:59:59.999Z',
      '2026-02-03T18:00Z',
      '2026-02-03T23:59Z',
      '2026-02-04T06:00Z',
    ])
      expect(at(time), time).toBeNull();
  });

  test('has a gust of 1.3 times the upper wind where none is said, and says that it is derived', () => {
    expect(at('2026-02-03T13:00Z')).toMatchObject({ gust: 52, derivedGust: true });
  });

  test('has nothing in place of what is not said', () => {
    expect(at('2026-02-04T01:00Z')).toMatchObject({
      wind: null,
      gust: null,
      derivedGust: false,
      seas: null,
      period: null,
      dir: null,
    });
  });

  test('has the warnings in force then; one without times always', () => {
    const about = (time: string) => at(time)?.warnings.map((one) => one.about);
    expect(about('2026-02-03T11:59Z')).toEqual(['small craft']);
    expect(about('2026-02-03T12:00Z')).toEqual(['gale', 'small craft']);
    expect(about('2026-02-04T00:00Z')).toEqual(['small craft']);
  });
});

describe('the place of a leg', () => {
  const point = (place: string, lat: number, lon: number) => ({ ...aster, place, at: [lat, lon] as const });
  const many = aForecast([
    point('a', 50, -5),
    point('b', 50.2, -5),
    point('c', 0, 179.9),
    aster,
    { ...aster, place: '' },
  ]);
  const name = (where: Parameters<typeof placeFor>[1]) => placeFor(many, where)?.place;

  test('is the one of its name, whatever letters it is written in', () => {
    expect(name({ place: 'ASTER BANK', at: [50, -5] })).toBe('Aster Bank');
  });

  test('is else the nearest point within 30 miles, also over the date line', () => {
    expect(name({ at: [50.15, -5] })).toBe('b');
    expect(name({ place: 'elsewhere', at: [50.05, -5] })).toBe('a');
    expect(name({ at: [0, -179.8] })).toBe('c');
  });

  test('is else the one that speaks for everywhere, or none', () => {
    expect(name({ at: [60, 10] })).toBe('');
    expect(placeFor(aForecast([point('a', 50, -5), aster]), { at: [60, 10] })).toBeNull();
    expect(placeFor(forecast, { place: 'Harrow' })).toBeNull();
  });
});
