import path from 'node:path';
import { type Forecast, forecastFileName, forecastSchema } from '../forecast/forecast.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { codeOf, type Disk } from './disk.ts';
import { namesIn } from './names-in.ts';
import { readTextFile } from './read-text.ts';
import { replaceFile } from './replace.ts';

/** A forecast of 400 places and 240 hours stays below. */
const MOST_BYTES = 32 * 1024 * 1024;
/** The newest so many are read: two a day for two months. */
const MOST_FORECASTS = 120;
/** And no more than so much of them, of ensembles some days: what is older no morning needs, and each would have to wait for it. */
const MOST_IN_ALL = 16 * 1024 * 1024;
const NAME = /^\d{8}T\d{4}Z-[0-9a-f]+\.json$/;

/** The forecasts taken in, the newest issued last; those that cannot be read are troubles. */
export function readForecasts(
  disk: Disk,
  boat: string,
): { readonly forecasts: readonly Forecast[]; readonly troubles: readonly Trouble[] } {
  const names = namesIn(disk, path.join(boat, 'forecasts')).filter((name) => NAME.test(name));
  const read: Result<Forecast>[] = [];
  let letters = 0;
  for (const name of names.sort().slice(-MOST_FORECASTS).reverse()) {
    const file = `forecasts/${name}`;
    const text = readTextFile(disk, path.join(boat, file), MOST_BYTES);
    letters += text.ok ? text.value.length : 0;
    if (letters > MOST_IN_ALL && read.length > 0) break;
    read.unshift(text.ok ? forecastIn(text.value, file) : text);
  }
  return {
    forecasts: read.flatMap((one) => (one.ok ? [one.value] : [])),
    troubles: read.flatMap((one) => (one.ok ? [] : one.troubles)),
  };
}

/** Puts a forecast into the boat's folder. The same one again changes nothing. */
export function keepForecast(disk: Disk, boat: string, forecast: Forecast): Result<string> {
  const file = path.join(boat, 'forecasts', forecastFileName(forecast));
  try {
    disk.makeFolder(path.dirname(file));
  } catch (error) {
    return bad({ kind: 'cannot write', file, code: codeOf(error) });
  }
  // The figures of an ensemble are many: a line each would double them.
  const spaces = forecast.places.some(({ members }) => members) ? 0 : 1;
  const bytes = new TextEncoder().encode(`${JSON.stringify(forecast, null, spaces)}\n`);
  const failed = replaceFile(disk, file, bytes);
  return failed ? bad({ kind: 'cannot write', ...failed }) : good(file);
}

function forecastIn(text: string, name: string): Result<Forecast> {
  try {
    const read = forecastSchema.safeParse(JSON.parse(text));
    if (read.success) return good(read.data);
    const [issue] = read.error.issues;
    return bad({ kind: 'forecast damaged', file: name, what: `${issue?.path.join('.')}: ${issue?.message}` });
  } catch {
    return bad({ kind: 'forecast damaged', file: name, what: 'it is not JSON' });
  }
}
