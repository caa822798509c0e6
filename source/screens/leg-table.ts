import { pointLetters } from '../forecast/compass.ts';
import type { LegMet } from '../words/legs-met.ts';
import { shownUnit } from '../words/preferred.ts';
import { amountWords, sentence } from '../words/say.ts';
import type { WeatherDocument } from '../words/weather-document.ts';
import { type Line, line, paragraph, say } from './lines.ts';
import { soonWords } from './when.ts';
import { pad, widthOf } from './width.ts';

const GAP = 2;

interface Sheet {
  readonly at: number;
  readonly zone: string;
  readonly columns: number;
}

/** What each leg meets, as a table, or as a sentence a leg where there is no room for one. */
export function legLines(legs: readonly LegMet[], limits: WeatherDocument['limits'], sheet: Sheet): Line[] {
  const told = legs.map((leg) => legSentence(leg, sheet));
  const limit = (figure: number | null, unit: string) => (figure === null ? '' : amountWords(figure, unit));
  const rows = [
    ['leg', 'sailed', 'wind', 'gusts', 'seas', 'stands in the way'],
    ...legs.map((leg) => legCells(leg, sheet)),
    ['limit', '', limit(limits.wind, 'kn'), limit(limits.gust, 'kn'), limit(limits.seas, 'm'), ''],
  ];
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((cells) => widthOf(cells[column]!))));
  const wide = widths.reduce((sum, width) => sum + width + GAP, GAP);
  if (wide > sheet.columns) return told.flatMap((text) => paragraph(text, sheet.columns - 2, { indent: 2 }));
  return rows.map((cells, row) => ({
    ...line(say('  '), ...cells.map((cell, column) => say(pad(cell, widths[column]! + GAP)))),
    heard: told[row - 1] ?? '',
  }));
}

function legCells(leg: LegMet, sheet: Sheet): string[] {
  return [
    leg.place,
    sailedWords(leg, sheet),
    windWords(leg),
    leg.gust === null ? '-' : amountWords(leg.gust, 'kn'),
    leg.seas === null ? '-' : amountWords(leg.seas, 'm'),
    standsWords(leg),
  ];
}

function legSentence(leg: LegMet, sheet: Sheet): string {
  const gust = leg.gust === null ? 'gusts not said' : `gusts ${amountWords(leg.gust, 'kn')}`;
  const seas = leg.seas === null ? 'seas not said' : `seas ${amountWords(leg.seas, 'm')}`;
  const wind = leg.wind === null ? 'wind not said' : `wind ${windWords(leg)}`;
  return sentence(
    `${leg.place}, ${sailedWords(leg, sheet)}: ${wind}, ${gust}, ${seas}; stands in the way: ${standsWords(leg)}`,
  );
}

function sailedWords({ from, until }: LegMet, { at, zone }: Sheet): string {
  return `${soonWords(from, at, zone)} to ${soonWords(until, at, zone).replace(/^\S+ (?=\d\d?:)/u, '')}`;
}

/** `12 kn (9 to 15) WNW, ahead`. */
function windWords({ wind, dir, ahead }: LegMet): string {
  if (wind === null) return '-';
  const { each } = shownUnit('kn', wind.mean);
  const spread = `(${Math.round(wind.low / each)} to ${Math.round(wind.high / each)})`;
  const from = dir === null ? '' : ` ${pointLetters(dir)}${ahead ? ', ahead' : ''}`;
  return `${amountWords(wind.mean, 'kn')} ${spread}${from}`;
}

function standsWords({ stands, beyond }: LegMet): string {
  const why =
    stands === null ? 'nothing' : `${stands.why}, ${Math.max(1, Math.round(stands.share * 100))} in 100`;
  return beyond ? `${why}; past the end of the forecast` : why;
}
