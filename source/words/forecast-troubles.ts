import type { ForecastTrouble } from '../trouble.ts';
import { cleanLine } from './clean.ts';
import { quoted } from './quoted.ts';
import { momentHere } from './say.ts';
import type { WordsOf } from './wording.ts';

const NOTHING = 'Nothing of it was taken in.';
const MOST_NAMES = 12;

/** The words for forecasts that cannot be taken in as they were given. */
export const forecastWords: WordsOf<ForecastTrouble> = {
  'forecast empty': () => ({
    title: 'the forecast is empty',
    right: 'A forecast is a text bulletin, a GRIB, a table in JSON or CSV, or rows typed as they are heard.',
    attempt: 'se 15-20 g28 4-6ft 7s',
  }),
  'forecast too long': ({ bytes, most }) => ({
    title: `the forecast is ${megabytes(bytes)}, more than the ${megabytes(most)} that is read of a text or table`,
    right: `A bulletin has a few thousand letters. ${NOTHING}`,
    attempt: 'the bulletin alone, without what surrounds it',
  }),
  'foreign file': ({ what }) => ({
    title: `this is ${cleanLine(what)}, which is no forecast this program reads`,
    right: `A text bulletin, a GRIB, an hourly or grid-point table in JSON, or a CSV table is. ${NOTHING}`,
    ...(what === 'a web page' ? { attempt: 'the text of the page alone, saved as text' } : {}),
  }),
  'no figures': () => ({
    title: 'no figure of wind or seas was understood',
    right: `What a forecast says of them stands in sentences, a table, or rows typed as they are heard. ${NOTHING}`,
    attempt: 'type it row by row: se 15-20 g28 4-6ft 7s',
  }),
  'not a forecast': ({ subjects }) => ({
    title: `this is ${subjects.map((one) => cleanLine(one)).join(', ')}, not a forecast`,
    right: 'The second letter behind ZCZC says what a message is; a forecast has an E there.',
  }),
  'no such zone': ({ zone, zones }) => ({
    title: `the text is not for ${quoted(zone)}`,
    right: `It is for ${names(zones)}.`,
    ...(zones[0] === undefined ? {} : { attempt: cleanLine(zones[0]) }),
  }),
  'zone wanted': ({ zones }) => ({
    title: `the text is for ${zones.length} waters, and none of them was chosen`,
    right: `They are ${names(zones)}. ${NOTHING}`,
    ...(zones[0] === undefined ? {} : { attempt: `--zone ${quoted(zones[0])}` }),
  }),
  'issue time wanted': () => ({
    title: 'the forecast does not say when it was issued',
    right: `Its hours and its age hang on that, so it is asked and not assumed. ${NOTHING}`,
    attempt: '--issued 2026-02-03T06:00Z',
  }),
  'direction wanted': ({ row, text, choices }) => ({
    title: `row ${row}: ${quoted(text)} is east in some languages and west in others`,
    right: 'Write e for east and w for west.',
    attempt: choices.map((one) => cleanLine(one)).join(' or '),
  }),
  'forecast over': ({ ended, now }) => ({
    title: `the forecast ended ${momentHere(Date.parse(ended))}, and it is ${momentHere(Date.parse(now))}`,
    right: `It says nothing of the hours to come. ${NOTHING}`,
    attempt: 'get a newer one',
  }),
  'row not understood': ({ row, text, word }) => ({
    title: `row ${row}: ${quoted(word)} is not understood`,
    text,
    right:
      'A row is direction, wind, gusts, seas, period, as in se 15-20 g28 4-6ft 7s; = is as above, a point alone is not heard.',
  }),
  'row says two': ({ row, text, what, first, second }) => ({
    title: `row ${row} contradicts itself: the ${cleanLine(what)} is ${quoted(first)} and ${quoted(second)}`,
    text,
    right: 'Only one of them can count.',
  }),
  'nothing above': ({ row }) => ({
    title: `row ${row}: = is as above, and nothing stands above`,
    right: 'The first row heard is written out.',
  }),
  'too many rows': ({ rows, most }) => ({
    title: `${rows} rows are more than the ${most} a forecast is typed in`,
    right: `A row is a day or a night. ${NOTHING}`,
  }),
  'table not understood': ({ where, found, expected }) => ({
    title: `${cleanLine(where, 300)}: ${cleanLine(found, 300)}`,
    right: `${capital(cleanLine(expected, 300))} is expected there. ${NOTHING}`,
  }),
  'nothing of use': ({ found }) => ({
    title: 'the GRIB holds no wind and no seas that are read',
    right: `Found in it: ${found.length === 0 ? 'no message' : names(found)}. ${NOTHING}`,
    attempt: 'wind and waves on a grid of latitudes and longitudes',
  }),
  'outside the grid': ({ areas }) => ({
    title: 'no part of the passage lies on the grid of the GRIB',
    right: `It covers ${names(areas)}. ${NOTHING}`,
    attempt: 'a request for the waters of the passage',
  }),
};

function names(zones: readonly string[]): string {
  const shown = zones.slice(0, MOST_NAMES).map((zone) => cleanLine(zone));
  const more = zones.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}

function megabytes(bytes: number): string {
  return `${Number((bytes / 1_000_000).toPrecision(3))} MB`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
