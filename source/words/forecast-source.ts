import type { Forecast } from '../forecast/forecast.ts';
import { cleanLine } from './clean.ts';

const MOST_LETTERS = 160;

const SOURCES: { readonly [source in Forecast['source']]: string } = {
  typed: 'rows typed as they were heard',
  bulletin: 'a bulletin',
  grib: 'a GRIB',
  json: 'a table in JSON',
  csv: 'a table in CSV',
};

/** What a forecast is and whose: `a bulletin from Harbour Office`. */
export function sourceWords({ source, issuer }: { source: string; issuer: string }): string {
  const what = Object.hasOwn(SOURCES, source) ? SOURCES[source as Forecast['source']] : cleanLine(source);
  return issuer === '' ? what : `${what} from ${cleanLine(issuer, MOST_LETTERS)}`;
}
