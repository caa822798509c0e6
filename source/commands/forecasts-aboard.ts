import { conditionAt } from '../condition/condition-at.ts';
import type { Draft } from '../logbook/entries.ts';
import type { BoatFolder, LoadedBoat, Outside } from '../outside.ts';
import { forecastMet } from '../readiness/forecast-met.ts';
import { forecastsAboard } from '../readiness/forecasts-aboard.ts';
import { bad, good, type Result } from '../trouble.ts';
import { instant } from '../words/figures.ts';
import { type AboardDocument, aboardDocument, metDocument } from '../words/forecasts-document.ts';
import { aboardLines, countsSentence, metSentences } from '../words/forecasts-lines.ts';
import { wrapped } from '../words/lines.ts';
import { unknownWord } from '../words/unknown-word.ts';
import type { Options } from './options.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';

/** More than so many are counted; `--json` has them all. */
const MOST_LISTED = 12;

/** The forecasts aboard side by side, which of them counts, and how far off forecasts have been. */
export function listAboard(
  loaded: LoadedBoat,
  now: number,
  { json }: Pick<Options, 'json'>,
  outside: Outside,
): number {
  const condition = conditionAt(loaded.boat, loaded.entries, now);
  const forecasts = aboardAt(loaded, now);
  const met = metDocument(forecastMet(loaded.boat, condition, loaded.forecasts));
  if (json) {
    outside.print(jsonText({ format: 1, boat: loaded.boat.name, forecasts, met }));
    return STATUS.done;
  }
  if (forecasts.length === 0) {
    outside.print('No forecast is aboard. Take one in: hoveshort forecast <file>\n');
    return STATUS.done;
  }
  const { columns } = outside.terminal;
  const last = forecasts.findIndex(({ counts }) => counts);
  const shown = forecasts.slice(0, Math.max(MOST_LISTED, last + 1));
  const lines = [
    ...aboardLines(shown, now, outside.zone, columns),
    ...(shown.length < forecasts.length ? [`and ${forecasts.length - shown.length} older`] : []),
    '',
    ...wrapped(`${countsSentence(forecasts)} Another: hoveshort forecast use <number>`, columns),
    '',
    ...metSentences(met).flatMap((sentence) => wrapped(sentence, columns, 0, 2)),
  ];
  outside.print(`${lines.join('\n')}\n`);
  return STATUS.done;
}

/** Enters in the log which forecast counts, by its number in the list or the beginning of its name; `newest`: again the newest. */
export async function chooseForecast(
  which: string | undefined,
  { folder, loaded, now }: { folder: BoatFolder; loaded: LoadedBoat; now: number },
  { json }: Pick<Options, 'json'>,
  outside: Outside,
): Promise<number> {
  if (loaded.readOnly) return complainOf([loaded.readOnly], outside);
  const forecasts = aboardAt(loaded, now);
  const counts = nameOf(which, forecasts);
  if (!counts.ok) return complainOf(counts.troubles, outside);
  const { name: by } = await outside.settings();
  const draft: Draft = {
    kind: 'forecast',
    at: instant(Math.floor(now / 1000) * 1000),
    counts: counts.value,
    ...(by === null ? {} : { by }),
  };
  const saved = await folder.append([draft]);
  if (!saved.ok) return complainOf(saved.troubles, outside);
  if (json) {
    outside.print(jsonText({ format: 1, saved: saved.value }));
    return STATUS.done;
  }
  const entries = [...loaded.entries, ...saved.value];
  return listAboard({ ...loaded, entries }, now, { json }, outside);
}

function aboardAt({ boat, entries, forecasts }: LoadedBoat, now: number): AboardDocument[] {
  const condition = conditionAt(boat, entries, now);
  return forecastsAboard(forecasts, condition, boat.limits.forecastError).map(aboardDocument);
}

function nameOf(which: string | undefined, forecasts: readonly AboardDocument[]): Result<string> {
  const example = 'hoveshort forecast use 2';
  if (which === undefined)
    return bad({ kind: 'wanting', what: 'the number of a forecast in the list, or newest', example });
  if (which === 'newest') return good(which);
  const numbered = /^\d{1,4}$/.test(which) ? forecasts[Number(which) - 1] : undefined;
  if (numbered) return good(numbered.name);
  const begun = forecasts.filter(({ name }) => name.toLowerCase().startsWith(which.toLowerCase()));
  if (begun.length === 1) return good(begun[0]!.name);
  const numbers = forecasts.map((_, index) => String(index + 1));
  return bad(unknownWord('forecast', which, [...numbers, 'newest', ...forecasts.map(({ name }) => name)]));
}
