import type { Forecast } from './forecast.ts';

/** The forecast that counts at an instant (ms since 1970 UTC): of those received by then the newest issued, of two the one received last. */
export function forecastAt(forecasts: readonly Forecast[], at: number): Forecast | null {
  const known = forecasts.filter(({ receivedAt }) => Date.parse(receivedAt) <= at);
  return known.reduce<Forecast | null>((newest, one) => (isNewer(one, newest) ? one : newest), null);
}

function isNewer(one: Forecast, than: Forecast | null): boolean {
  if (than === null) return true;
  const issued = Date.parse(one.issuedAt) - Date.parse(than.issuedAt);
  return issued !== 0 ? issued > 0 : Date.parse(one.receivedAt) >= Date.parse(than.receivedAt);
}
