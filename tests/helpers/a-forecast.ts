import type { Given } from '../../source/forecast/content.ts';
import type { Forecast, PlaceForecast, Step } from '../../source/forecast/forecast.ts';
import { readForecast, type Understood } from '../../source/forecast/recognise.ts';
import type { Result } from '../../source/trouble.ts';

export const SHA256 = 'a'.repeat(64);

export function aStep(from: string, to: string, change: Partial<Step> = {}): Step {
  return {
    ...{ from, to, wind: [15, 20], dir: 225, gust: 26, seas: [1, 1.5], period: 6, periodKind: null },
    ...{ pressure: null, squalls: null, how: 'read', ...change },
  };
}

export function aForecast(places: readonly PlaceForecast[], change: Partial<Forecast> = {}): Forecast {
  return {
    ...{ format: 1, source: 'bulletin', issuer: 'Harbour Office', sha256: SHA256, notRead: [], problems: [] },
    ...{ issuedAt: '2026-02-03T06:00:00.000Z', receivedAt: '2026-02-03T07:00:00.000Z', places, ...change },
  };
}

/** Reads a source as it would be read aboard on 3 February 2026, 07:00 UTC. */
export function read(source: string | Uint8Array, change: Partial<Given> = {}): Result<Understood> {
  const bytes = typeof source === 'string' ? new TextEncoder().encode(source) : source;
  return readForecast(bytes, {
    now: Date.parse('2026-02-03T07:00Z'),
    timeZone: 'Europe/London',
    bare: { wind: 'kn', seas: 'm' },
    sha256: SHA256,
    ...change,
  });
}

/** The forecast a source comes to, or an error with what stands in the way. */
export function forecastOf(source: string | Uint8Array, change: Partial<Given> = {}): Forecast {
  const result = read(source, change);
  if (!result.ok || result.value.kind !== 'forecast')
    throw new Error(`no forecast: ${JSON.stringify(result)}`);
  return result.value.forecast;
}
