import type { Hindrance } from '../readiness/hindrances.ts';
import type { WeatherShown } from '../readiness/weather-shown.ts';
import type { HourlyWeather } from '../readiness/weather-table.ts';
import { instant, six, sixOrNull } from './figures.ts';

/** The forecast for the passage, hour by hour from `from`, against the limits. Null is what is not said, never 0. */
export interface WeatherDocument {
  from: string;
  /** kn and m; null where there is no limit, or none is to be judged. */
  limits: {
    wind: number | null;
    gust: number | null;
    seas: number | null;
    headwind: number | null;
    overHours: number;
  };
  /** In the order sailed. Hours at the usual speed; `forecast` is its place in `forecasts`. */
  legs: {
    place: string | null;
    nm: number;
    courseDeg: number;
    startsHours: number;
    lastsHours: number;
    forecast: number;
  }[];
  /** `windSd` and `seasSd`: one standard deviation of what the forecast may stray; a gust strays 1.3 times as far as the wind. Directions are those the wind comes from, degrees true. */
  forecasts: {
    wind: (number | null)[];
    windSd: (number | null)[];
    gust: (number | null)[];
    dir: (number | null)[];
    seas: (number | null)[];
    seasSd: (number | null)[];
    period: (number | null)[];
    derivedGust: boolean;
  }[];
  /** One a departure of the curve: on each leg the worst that stands in the way, and the share of the passages (0..1) in which it is the first to do so. */
  departures: { leg: number; what: Hindrance; share: number }[][];
}

export function weatherDocument({
  from,
  limits,
  legs,
  forecasts,
  departures,
}: WeatherShown): WeatherDocument {
  const limit = (figure: number | false | undefined) => (typeof figure === 'number' ? six(figure) : null);
  return {
    from: instant(from),
    limits: {
      wind: limit(limits.wind),
      gust: limit(limits.gust),
      seas: limit(limits.seas),
      headwind: limit(limits.headwind),
      overHours: six(limits.overHours),
    },
    legs: legs.map(({ place, nm, courseDeg, startsHours, lastsHours, forecast }) => ({
      place,
      nm: six(nm),
      courseDeg: six(courseDeg),
      startsHours: six(startsHours),
      lastsHours: six(lastsHours),
      forecast,
    })),
    forecasts: forecasts.map(forecastDocument),
    departures: departures.map((standing) =>
      standing.map(({ leg, hindrance, share }) => ({ leg, what: hindrance, share: six(share) })),
    ),
  };
}

function forecastDocument(hourly: HourlyWeather): WeatherDocument['forecasts'][number] {
  const list = (figures: Float64Array) =>
    Array.from(figures, (figure) => sixOrNull(Number.isNaN(figure) ? null : figure));
  return {
    wind: list(hourly.wind),
    windSd: list(hourly.windSd),
    gust: list(hourly.gust),
    dir: list(hourly.dir),
    seas: list(hourly.seas),
    seasSd: list(hourly.seasSd),
    period: list(hourly.period),
    derivedGust: hourly.derivedGust,
  };
}
