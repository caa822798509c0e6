import { durationWords, momentWords } from '../../words/say.ts';
import { apart, type Line, line, lineWidth, type Span, say } from '../lines.ts';
import { FRESH } from '../model.ts';
import { MARKS } from '../panel.ts';
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
  const forecast = [say('   '), ...forecastSpans(sight)];
  const left = where === '' ? name : [...name, say(`  ${where}`)];
  const ways: [Span[], Span[]][] = [
    [left, [say(when), ...forecast]],
    [left, [say(short), ...forecast]],
    [name, [say(short), ...forecast]],
    [name, [say(short)]],
  ];
  const fits = ways.find(([one, other]) => lineWidth(line(...one, ...other)) + 4 <= columns);
  return fits ? apart(fits[0], [...fits[1], say('  ')], columns) : line(...name);
}

/** How old the forecast is, with the mark of its state: old is worth watching, too old never says go. */
export function forecastSpans({ document, model }: Sight): Span[] {
  if (!document) return [say('working')];
  if (!document.forecast) return [say('no forecast')];
  const { ageHours, age } = document.forecast;
  const words = `forecast ${durationWords(ageHours < 2 ? ageHours : Math.round(ageHours))} old`;
  if (age === 'fresh') return [say(words)];
  const fresh = model.fresh.has(FRESH.forecast) ? 'NEW ' : '';
  const state = age === 'old' ? 'watch' : 'unfit';
  return [say(`${MARKS[state]} ${fresh}${words}`, state)];
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
