import { durationWords, momentWords } from '../../words/say.ts';
import { apart, type Line, line, lineWidth, say } from '../lines.ts';
import type { Sight } from '../sight.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

/** Who, where, as of when, how old the forecast: as much of it as the width holds. */
export function headingLine(sight: Sight, columns: number): Line {
  const { boat, document, at, model } = sight;
  const name = [say('  '), say((document?.boat ?? boat.loaded.boat.name).toLocaleUpperCase(), 'title')];
  const where = document ? whereabouts(document, at) : '';
  const when = momentWords(at, model.zone);
  const short = momentWords(at, model.zone, at);
  const age = document?.forecast
    ? `forecast ${durationWords(document.forecast.ageHours)} old`
    : 'no forecast';
  const forecast = document ? `   ${age}` : '   working';
  const left = where === '' ? name : [...name, say(`  ${where}`)];
  const ways: [typeof name, string][] = [
    [left, `${when}${forecast}  `],
    [left, `${short}${forecast}  `],
    [name, `${short}${forecast}  `],
    [name, `${short}  `],
  ];
  const fits = ways.find(([one, other]) => lineWidth(line(...one)) + other.length + 2 <= columns);
  return fits ? apart(fits[0], [say(fits[1])], columns) : line(...name);
}

function whereabouts(document: NonNullable<Sight['document']>, at: number): string {
  if (document.underWaySince !== null) {
    return `under way for ${durationWords((at - Date.parse(document.underWaySince)) / HOUR_MS)}`;
  }
  if (!document.anchorage) return '';
  const { name, since } = document.anchorage;
  return since === null
    ? `at ${name}`
    : `at ${name}, day ${Math.floor((at - Date.parse(since)) / DAY_MS) + 1}`;
}
