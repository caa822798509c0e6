import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecastAt } from '../../source/forecast/choose.ts';
import { forecastName } from '../../source/forecast/forecast.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const HOUR = 3_600_000;
const start = Date.parse('2026-02-03T00:00:00Z');
/** Issued at that hour, received a quarter of an hour later. */
const issued = (hour: number, sha = 'a') =>
  steadyForecast(start + hour * HOUR, [{ hours: 48 }], {
    receivedAt: new Date(start + (hour + 0.25) * HOUR).toISOString(),
    sha256: sha.repeat(64),
  });
const at = (hour: number) => start + hour * HOUR;

describe('the forecast that counts', () => {
  it('is the newest issued of those received by then', () => {
    const [six, twelve] = [issued(6), issued(12)];
    expect(forecastAt([twelve, six], at(13), null)).toBe(twelve);
    expect(forecastAt([twelve, six], at(12.2), null)).toBe(six);
    expect(forecastAt([six], at(6), null)).toBeNull();
  });

  it('is the one chosen, until one issued later is received', () => {
    const [six, twelve, late, early] = [issued(6), issued(12), issued(18), issued(5, 'b')];
    const choice = { counts: forecastName(six), at: at(13) };
    expect(forecastAt([six, twelve], at(14), choice)).toBe(six);
    expect(forecastAt([six, twelve, late], at(19), choice)).toBe(late);
    const old = { ...early, receivedAt: new Date(at(15)).toISOString() };
    expect(forecastAt([six, twelve, old], at(16), choice)).toBe(six);
  });

  it('is the newest where the one chosen is not aboard', () => {
    const six = issued(6);
    expect(forecastAt([six], at(7), { counts: '20260203T0000Z-000000000000', at: at(6) })).toBe(six);
  });

  it('is the same in whatever order they lie', () => {
    const all = [issued(0), issued(6), issued(6, 'b'), issued(12)];
    fc.assert(
      fc.property(
        fc.shuffledSubarray(all, { minLength: 1 }),
        fc.option(fc.constantFrom(...all), { nil: null }),
        (some, chosen) => {
          const choice = chosen && { counts: forecastName(chosen), at: at(20) };
          const names = [some, some.toReversed()].map((list) => forecastAt(list, at(24), choice)?.issuedAt);
          expect(names[0]).toBe(names[1]);
        },
      ),
    );
  });
});
