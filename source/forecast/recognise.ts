import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { readBulletin } from './bulletin/bulletin.ts';
import type { Ask, Content, Given, Reading } from './content.ts';
import { isCsv, readCsv } from './csv.ts';
import { type Forecast, forecastSchema, type Problem } from './forecast.ts';
import { isGridPoint, readGridPoint } from './grid-point-json.ts';
import { isHourly, readHourly } from './hourly-json.ts';
import { foreignKind, isGrib } from './magic.ts';
import { decoded, plainText } from './plain-text.ts';
import { MOST_ROWS, readTyped } from './typed.ts';
import { isSentence } from './typed-row.ts';

const HOUR = 3_600_000;
/** The longest bulletins have some tens of kilobytes, a CSV table with as many rows as may be a few hundred; JSON takes more for the same. */
const MOST_TEXT_BYTES = 500_000;
const MOST_JSON_BYTES = 4_000_000;
/** Enough to tell by. */
const START_BYTES = 1000;
const JSON_START = /^[[{]/;
const WEB_PAGE = /^<(?:!doctype|html|\?xml|head|body|pre)\b/i;
/** Older than this it is never gone by: a newer one is to be had. */
const OLD_HOURS = 24;
/** Clocks aboard and ashore differ by less. */
const AHEAD_MS = HOUR;
const MOST_REMARKS = 1000;
/** A text of this many rows of which none is understood is no typed forecast with slips in it. */
const FEW_ROWS = 3;

/** What a source was understood as. `asks`: what must be asked first; then it is read again with the answers given. */
export type Understood =
  | { readonly kind: 'grib' }
  | { readonly kind: 'asks'; readonly asks: readonly Ask[] }
  | { readonly kind: 'forecast'; readonly forecast: Forecast };

/**
 * Recognises what it is given by its content, never by a name, and reads it: a GRIB (only recognised here), hourly or grid-point JSON, the CSV template, a text bulletin,
 * or rows as they are typed. All of it or nothing: what cannot be understood, has ended, or is something else is in trouble; what was left over is in the
 * forecast's `notRead`, what should be looked at in its `problems`. Time grows with length, and what is too long is not read.
 */
export function readForecast(
  bytes: Uint8Array,
  given: Given & { readonly sha256: string },
): Result<Understood> {
  if (isGrib(bytes)) return good({ kind: 'grib' });
  const what = foreignKind(bytes);
  if (what !== null) return bad({ kind: 'foreign file', what });
  const start = plainText(decoded(bytes.subarray(0, START_BYTES), 'start')).text.trimStart();
  if (WEB_PAGE.test(start)) return bad({ kind: 'foreign file', what: 'a web page' });
  const most = JSON_START.test(start) ? MOST_JSON_BYTES : MOST_TEXT_BYTES;
  if (bytes.length > most) return bad({ kind: 'forecast too long', bytes: bytes.length, most });
  const { text, cleaned } = plainText(decoded(bytes));
  const reading = readText(text, given);
  if (!reading.ok) return reading;
  if ('asks' in reading.value) return good({ kind: 'asks', asks: reading.value.asks });
  const control: readonly Problem[] = cleaned ? [{ kind: 'control codes', where: '' }] : [];
  return finished(reading.value.content, control, given);
}

/** What must be asked, as a trouble: for who cannot be asked. */
export function askTrouble(ask: Ask): Trouble {
  switch (ask.what) {
    case 'issued':
      return { kind: 'issue time wanted' };
    case 'zone':
      return { kind: 'zone wanted', zones: ask.zones.map(({ id }) => id) };
    case 'direction':
      return { kind: 'direction wanted', row: ask.row, text: ask.text, choices: ask.choices };
  }
}

/** A content with what its taker knows, held to the shape. One whose every hour is past is in trouble; an old one, or one from the future, is said to be so. */
export function finished(
  content: Content,
  more: readonly Problem[],
  { now, sha256 }: { readonly now: number; readonly sha256: string },
): Result<Understood> {
  const ended = Math.max(
    ...content.places.flatMap(({ steps }) => steps.slice(-1).map(({ to }) => Date.parse(to))),
  );
  if (!Number.isFinite(ended)) return bad({ kind: 'no figures' });
  if (ended <= now) return bad({ kind: 'forecast over', ended: iso(ended), now: iso(now) });
  const ageHours = (now - Date.parse(content.issuedAt)) / HOUR;
  const age: readonly Problem[] =
    ageHours > OLD_HOURS
      ? [{ kind: 'old', where: '', value: Math.round(ageHours) }]
      : -ageHours * HOUR > AHEAD_MS
        ? [{ kind: 'ahead of now', where: '', value: Math.round(-ageHours) }]
        : [];
  const parsed = forecastSchema.safeParse({
    format: 1,
    ...content,
    issuer: content.issuer.slice(0, 200),
    receivedAt: iso(now),
    sha256,
    notRead: content.notRead.slice(0, MOST_REMARKS),
    problems: [...age, ...more, ...content.problems].slice(0, MOST_REMARKS),
  });
  if (parsed.success) return good({ kind: 'forecast', forecast: parsed.data });
  const where = parsed.error.issues[0]?.path.map(String).join('.') ?? '';
  return bad({
    kind: 'table not understood',
    where,
    found: 'a value beyond what any forecast has',
    expected: 'a forecast of wind and seas',
  });
}

function readText(text: string, given: Given): Result<Reading> {
  const start = text.trimStart();
  if (start === '') return bad({ kind: 'forecast empty' });
  if (JSON_START.test(start)) return readJson(text, given);
  if (isCsv(text)) return readCsv(text, given);
  return readBulletin(text, given) ?? readRows(text, given);
}

/** Rows one a line; of sentences, one a paragraph, since a sentence goes on in the next line. */
function readRows(text: string, given: Given): Result<Reading> {
  const lines = text.split('\n');
  const rows = lines.some(isSentence) ? text.split(/\n\s*\n/).map((row) => row.replace(/\s+/g, ' ')) : lines;
  const written = rows.filter((row) => row.trim() !== '');
  if (written.length > MOST_ROWS) return bad({ kind: 'no figures' });
  const read = readTyped(written, given);
  const isForeign = !read.ok && read.troubles.length === written.length && written.length >= FEW_ROWS;
  return isForeign ? bad({ kind: 'no figures' }) : read;
}

function readJson(text: string, given: Given): Result<Reading> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return bad({
      kind: 'table not understood',
      where: 'the file',
      found: 'JSON that is not whole',
      expected: 'a table to its last bracket',
    });
  }
  if (isHourly(json)) return readHourly(json, given);
  if (isGridPoint(json)) return readGridPoint(json, given);
  const isReading = typeof json === 'object' && json !== null && 'current' in json;
  return bad({
    kind: 'foreign file',
    what: isReading ? 'what the weather is now, without hours to come' : 'JSON of another kind',
  });
}

function iso(at: number): string {
  return new Date(at).toISOString();
}
