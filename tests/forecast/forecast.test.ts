import { describe, expect, test } from 'vitest';
import { forecastFileName, forecastSchema } from '../../source/forecast/forecast.ts';
import { aForecast, aStep } from '../helpers/a-forecast.ts';

const step = aStep('2026-02-03T06:00:00.000Z', '2026-02-03T12:00:00.000Z');
const place = { place: 'Aster', headlines: [], steps: [step] };
const accepts = (change: object) => forecastSchema.safeParse({ ...aForecast([place]), ...change }).success;
const acceptsStep = (change: object) => accepts({ places: [{ ...place, steps: [{ ...step, ...change }] }] });

describe('the shape of a forecast', () => {
  test('holds what is known, and null for what is not', () => {
    expect(accepts({})).toBe(true);
    expect(
      acceptsStep({ wind: null, dir: null, gust: null, seas: null, period: null, periodKind: null }),
    ).toBe(true);
    expect(acceptsStep({ gust: undefined })).toBe(false);
  });

  test('keeps fields of later versions', () => {
    const parsed = forecastSchema.parse({ ...aForecast([place]), tides: 'springs' });
    expect(parsed).toMatchObject({ tides: 'springs' });
  });

  test.each<[string, object]>([
    ['a range backwards', { wind: [20, 15] }],
    ['a wind below zero', { wind: [-5, 15] }],
    ['a wind that is not a number', { wind: [Number.NaN, 15] }],
    ['a direction past 360', { dir: 361 }],
    ['a step that ends before it begins', { to: '2026-02-03T05:00:00.000Z' }],
    ['a local time', { from: '2026-02-03T06:00:00' }],
    ['a pressure of no weather', { pressure: 101300 }],
  ])('does not hold %s', (_, change) => {
    expect(acceptsStep(change)).toBe(false);
  });

  test('holds steps in order, with gaps and without overlaps', () => {
    const next = aStep('2026-02-03T11:00:00.000Z', '2026-02-03T18:00:00.000Z');
    expect(accepts({ places: [{ ...place, steps: [step, next] }] })).toBe(false);
    expect(
      accepts({ places: [{ ...place, steps: [step, { ...next, from: '2026-02-03T13:00:00.000Z' }] }] }),
    ).toBe(true);
    expect(accepts({ places: [] })).toBe(false);
  });
});

test('its file is named by its issue and by what it was read from', () => {
  const named = aForecast([place], {
    issuedAt: '2026-02-03T06:05:59.000Z',
    sha256: `1a2b3c4d5e6f${'0'.repeat(52)}`,
  });
  expect(forecastFileName(named)).toBe('20260203T0605Z-1a2b3c4d5e6f.json');
});
