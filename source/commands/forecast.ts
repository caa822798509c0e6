import { conditionAt } from '../condition/condition-at.ts';
import { placeFor } from '../forecast/at.ts';
import type { Ask, Given } from '../forecast/content.ts';
import type { Forecast } from '../forecast/forecast.ts';
import { forecastFromGrib, type Point } from '../forecast/grib/forecast-from-grib.ts';
import { readGrib } from '../forecast/grib/read.ts';
import { summaryOf } from '../forecast/grib/summary.ts';
import { askTrouble, finished, readForecast, type Understood } from '../forecast/recognise.ts';
import type { LoadedBoat, Outside } from '../outside.ts';
import { piecesOf, whereOf } from '../passage/pieces.ts';
import { bad, good, type Result } from '../trouble.ts';
import { cleanLine } from '../words/clean.ts';
import { forecastPage } from '../words/forecast-page.ts';
import { gribLines } from '../words/grib-lines.ts';
import { momentFrom } from '../words/moments.ts';
import { bareUnits } from '../words/preferred.ts';
import type { Command, Request } from './command.ts';
import { chooseForecast, listAboard } from './forecasts-aboard.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

/** A weather file for a boat is some tens of kilobytes; a global one of days does not come by radio. */
const MOST_BYTES = 64 * 1024 * 1024;
/** A question answered wrongly so often is left. */
const MOST_ASKED = 5;

export const forecast: Command = {
  word: 'forecast',
  takes: '<file> | - | use <number>',
  says: 'shows a forecast as it is understood, then takes it in; alone, the forecasts aboard',
  more: [
    'Takes a text bulletin, hourly or grid-point JSON, a CSV table, a GRIB, or rows as typed, one for each day and night:',
    '  se 15-20 g28 4-6ft 7s     wind from, its speed, gusts, seas, period; = as above; . not heard',
    'A number without a unit is in those preferred, with --json in knots and metres: 15kt, 8m/s, 2m and 6ft say which.',
    'What was not read is shown. Nothing counts until it is taken in: asked on a terminal, --yes for scripts.',
    'The newest issued counts; all are kept in the boat folder, in forecasts/. forecast alone lists them side by side',
    'with how far off they have been; forecast use <number> makes another count, until a newer one is taken in;',
    'forecast use newest goes back. A file called use is ./use.',
  ],
  example: 'hoveshort forecast coastal.txt --zone PZZ575 --issued "today 06:00"',
  options: ['yes', 'issued', 'zone'],
  async run({ words, options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { folder, loaded } = opened.value;
    const now = options.at ?? outside.now();
    if (words[0] === undefined) return listAboard(loaded, now, options, outside);
    if (words[0] === 'use') return chooseForecast(words[1], { folder, loaded, now }, options, outside);
    const read = await understood({ words, options }, loaded, now, outside);
    if (!read.ok) return complainOf(read.troubles, outside);
    outside.print(options.json ? jsonText(read.value) : forecastPage(read.value, now, outside.zone));
    for (const line of coverage(read.value, loaded, now)) outside.complain(`${line}\n`);
    if (!(options.yes || (await agreed(outside)))) {
      outside.complain('Not taken in.\n');
      return STATUS.done;
    }
    const kept = await folder.keepForecast(read.value);
    if (!kept.ok) return complainOf(kept.troubles, outside);
    outside.complain(`Taken in: ${cleanLine(kept.value)}\n`);
    return STATUS.done;
  },
};

/** Reads the file, asking what it does not say; where there is nobody to ask, what is wanting is a trouble. */
async function understood(
  { words, options }: Request,
  loaded: LoadedBoat,
  now: number,
  outside: Outside,
): Promise<Result<Forecast>> {
  const [file] = words;
  const bytes = file === '-' ? await outside.input(MOST_BYTES) : await outside.file(file!, MOST_BYTES);
  if (!bytes.ok) return bytes;
  let given: Given & { sha256: string } = {
    now,
    timeZone: outside.zone,
    bare: bareUnits(),
    issuedAt: options.issued ?? undefined,
    zones: options.zone?.split(',').map((zone) => zone.trim()),
    sha256: outside.sha256(bytes.value),
  };
  for (let asked = 0; asked < MOST_ASKED; asked += 1) {
    const read = readForecast(bytes.value, given);
    if (!read.ok) return read;
    if (read.value.kind === 'forecast') return good(read.value.forecast);
    if (read.value.kind === 'grib')
      return forecastOf(await readGribFor(bytes.value, loaded, given, { outside, json: options.json }));
    const answers = await answersTo(read.value.asks, now, outside);
    if (answers === null) return bad(...read.value.asks.map(askTrouble));
    given = { ...given, ...answers };
  }
  return bad({ kind: 'issue time wanted' });
}

function forecastOf(read: Result<Understood>): Result<Forecast> {
  if (!read.ok) return read;
  return read.value.kind === 'forecast' ? good(read.value.forecast) : bad({ kind: 'no figures' });
}

/** A GRIB is read where the boat goes: the pieces of every passage, and the anchorages. */
async function readGribFor(
  bytes: Uint8Array,
  { boat }: LoadedBoat,
  given: Given & { sha256: string },
  { outside, json }: { outside: Outside; json: boolean },
): Promise<Result<Understood>> {
  const points: Point[] = [
    ...boat.passages.flatMap((passage) =>
      piecesOf(passage).map(({ middle, fromNm }) => ({
        place: `${passage.name}, mile ${Math.round(fromNm)}`,
        at: [middle[0], middle[1]] as [number, number],
      })),
    ),
    ...boat.anchorages.map(({ name, at }) => ({ place: name, at: [at[0], at[1]] as [number, number] })),
  ];
  const file = readGrib(bytes);
  const content = await forecastFromGrib(file, points, { decodeJpeg: outside.decodeJpeg2000 });
  if (!content.ok) return content;
  if (!json) outside.print(`${gribLines(summaryOf(file), outside.zone).join('\n')}\n\n`);
  return finished(content.value, [], given);
}

/** What is answered to what must be asked; null where there is nobody to ask, or no answer can help. */
async function answersTo(
  asks: readonly Ask[],
  now: number,
  outside: Outside,
): Promise<Partial<Pick<Given, 'issuedAt' | 'zones'>> | null> {
  let answers: Partial<Pick<Given, 'issuedAt' | 'zones'>> = {};
  for (const ask of asks) {
    if (ask.what === 'direction') return null;
    if (ask.what === 'zone') {
      const list = ask.zones.map(({ id, name }) => `  ${cleanLine(id)}  ${cleanLine(name)}\n`).join('');
      const typed = await outside.ask(`It is for several waters:\n${list}Which? `);
      if (typed === null) return null;
      answers = { ...answers, zones: typed.split(',').map((zone) => zone.trim()) };
    } else {
      const typed = await outside.ask('When was it issued? (06:00, yesterday 18:00, 2026-02-03T06:00Z) ');
      const at = typed === null ? null : momentFrom(typed, now, outside.zone);
      if (typed === null) return null;
      if (at !== null) answers = { ...answers, issuedAt: at };
    }
  }
  return answers;
}

async function agreed(outside: Outside): Promise<boolean> {
  const answer = await outside.ask('Take it in? (yes or no) ');
  return answer !== null && /^y(es)?$/i.test(answer.trim());
}

/** The legs of the passage planned of which the forecast says nothing: they would bar leaving. */
function coverage(read: Forecast, { boat, entries }: LoadedBoat, now: number): readonly string[] {
  const { passage } = conditionAt(boat, entries, now);
  if (passage === null) return [];
  const silent = piecesOf(passage).filter((piece) => placeFor(read, whereOf(piece)) === null);
  return [
    ...new Set(silent.map(({ leg, place }) => `leg ${leg + 1}${place === null ? '' : `, ${place}`}`)),
  ].map(
    (leg) =>
      `It says nothing of ${cleanLine(leg)} of the passage planned: give the leg its "place" in boat.json, by the name the forecast has.`,
  );
}
