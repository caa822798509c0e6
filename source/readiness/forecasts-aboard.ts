import type { Limits } from '../boat/limits.ts';
import type { Condition } from '../condition/condition.ts';
import { placeFor } from '../forecast/at.ts';
import { forecastAt } from '../forecast/choose.ts';
import { type Forecast, forecastName } from '../forecast/forecast.ts';
import { piecesOf, whereOf } from '../passage/pieces.ts';
import { hourlyWeather } from './weather-table.ts';

const MS_AN_HOUR = 3_600_000;
/** What forecasts say is set side by side over so many hours (judgement: as far as most of them go). */
const AHEAD_HOURS = 48;

/** A forecast aboard, beside the others. Instants are ms since 1970 UTC. */
export interface Aboard {
  readonly name: string;
  readonly source: Forecast['source'];
  readonly issuer: string;
  /** Members of an ensemble; 0 for any other. */
  readonly members: number;
  /** The waters and points it speaks of. */
  readonly places: readonly string[];
  readonly issuedAt: number;
  readonly receivedAt: number;
  readonly ageHours: number;
  /** From the first hour it speaks of, at any of its places, to the last. */
  readonly from: number;
  readonly until: number;
  readonly counts: boolean;
  /** It counts because the skipper said so. */
  readonly chosen: boolean;
  /** The hardest it has along the passage planned over the next hours, kn and m, null what it does not say; null where it says nothing of the passage. */
  readonly ahead: {
    readonly hours: number;
    readonly wind: number | null;
    readonly gust: number | null;
    readonly seas: number | null;
  } | null;
}

/** The forecasts received by then side by side, the newest issued first. They are compared, never mixed. */
export function forecastsAboard(
  forecasts: readonly Forecast[],
  { at, passage, forecastChoice }: Condition,
  errors: Limits['forecastError'],
): readonly Aboard[] {
  const counting = forecastAt(forecasts, at, forecastChoice);
  return forecasts
    .filter(({ receivedAt }) => Date.parse(receivedAt) <= at)
    .toReversed()
    .map((forecast) => {
      const counts = forecast === counting;
      const name = forecastName(forecast);
      const issuedAt = Date.parse(forecast.issuedAt);
      const ends = forecast.places.flatMap(({ steps }) => steps.slice(-1).map(({ to }) => Date.parse(to)));
      const starts = forecast.places.flatMap(({ steps }) =>
        steps.slice(0, 1).map(({ from }) => Date.parse(from)),
      );
      return {
        name,
        source: forecast.source,
        issuer: forecast.issuer,
        members: forecast.places[0]!.members?.length ?? 0,
        places: forecast.places.map(({ place }) => place),
        issuedAt,
        receivedAt: Date.parse(forecast.receivedAt),
        ageHours: (at - issuedAt) / MS_AN_HOUR,
        from: Math.min(...starts, ...ends),
        until: Math.max(...ends, ...starts),
        counts,
        chosen: counts && forecastChoice?.counts === name,
        ahead: passage && Math.max(...ends) > at ? aheadOf(forecast, passage, at, errors) : null,
      };
    })
    .sort((one, other) => other.issuedAt - one.issuedAt || other.receivedAt - one.receivedAt);
}

function aheadOf(
  forecast: Forecast,
  passage: NonNullable<Condition['passage']>,
  at: number,
  errors: Limits['forecastError'],
): Aboard['ahead'] {
  const wheres = piecesOf(passage).map(whereOf);
  const places = new Map(wheres.map((where) => [placeFor(forecast, where), where]));
  places.delete(null);
  if (places.size === 0) return null;
  const tables = [...places.values()].map((where) => hourlyWeather(forecast, where, at, AHEAD_HOURS, errors));
  const most = (what: 'wind' | 'gust' | 'seas') => {
    const said = tables.flatMap((table) => [...table[what]].filter((figure) => !Number.isNaN(figure)));
    return said.length === 0 ? null : Math.max(...said);
  };
  return { hours: AHEAD_HOURS, wind: most('wind'), gust: most('gust'), seas: most('seas') };
}
