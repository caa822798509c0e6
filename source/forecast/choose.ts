import { type Forecast, forecastName } from './forecast.ts';

/** The forecast the skipper said counts, by its name, and when; ms since 1970 UTC. */
interface ForecastChoice {
  readonly counts: string;
  readonly at: number;
}

/**
 * The forecast that counts at an instant (ms since 1970 UTC), of those received by then: the one chosen, until one issued later is received; else the newest issued,
 * of two the one received last.
 */
export function forecastAt(
  forecasts: readonly Forecast[],
  at: number,
  choice: ForecastChoice | null,
): Forecast | null {
  const known = forecasts.filter(({ receivedAt }) => Date.parse(receivedAt) <= at);
  const newest = known.reduce<Forecast | null>((best, one) => (isNewer(one, best) ? one : best), null);
  const chosen = choice && known.find((one) => forecastName(one) === choice.counts);
  if (!chosen) return newest;
  const overtaken = known.some(
    ({ issuedAt, receivedAt }) =>
      Date.parse(receivedAt) > choice.at && Date.parse(issuedAt) > Date.parse(chosen.issuedAt),
  );
  return overtaken ? newest : chosen;
}

function isNewer(one: Forecast, than: Forecast | null): boolean {
  if (than === null) return true;
  const issued = Date.parse(one.issuedAt) - Date.parse(than.issuedAt);
  return issued !== 0 ? issued > 0 : Date.parse(one.receivedAt) >= Date.parse(than.receivedAt);
}
