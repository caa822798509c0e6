import { pointLetters } from '../forecast/compass.ts';
import type { Forecast, Headline, Member, PlaceForecast, Step } from '../forecast/forecast.ts';
import { cleanLine } from './clean.ts';
import { problemSentence } from './forecast-problems.ts';
import { sourceWords } from './forecast-source.ts';
import { spanWords } from './heard-words.ts';
import { aligned } from './lines.ts';
import { amountWords, capital, counted, durationWords, momentWords } from './say.ts';

const MS_AN_HOUR = 3_600_000;
const MOST_LETTERS = 160;
const MOST_LINE = 400;
/** What is left over is shown, but not for ever. */
const MOST_NOT_READ = 30;

/** A forecast as it was understood, step by step, and all that was not: what a person sees before it counts. */
export function forecastPage(forecast: Forecast, now: number, zone: string): string {
  const { issuedAt, places, notRead, problems } = forecast;
  const age = (now - Date.parse(issuedAt)) / MS_AN_HOUR;
  const blocks = [
    [
      `${capital(sourceWords(forecast))}, issued ${momentWords(Date.parse(issuedAt), zone)}, ${age < 0 ? `${durationWords(-age)} from now` : `${durationWords(age)} old`}.`,
    ],
    ...places.map((place) => placeLines(place, zone)),
    leftOver(
      'Not read',
      notRead.map(({ where, text }) => `${where}: ${text}`),
    ),
    leftOver(
      'To look at',
      problems.map((problem) => problemSentence(problem, zone)),
    ),
  ];
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function placeLines(
  { place, at, nearestSeaNm, headlines, steps, members = [] }: PlaceForecast,
  zone: string,
): readonly string[] {
  const position = at === undefined ? '' : `${at[0].toFixed(2)}, ${at[1].toFixed(2)}`;
  const where = at === undefined ? 'Everywhere' : `Near ${position}`;
  const named = `${cleanLine(place, MOST_LETTERS)}${at === undefined ? '' : ` at ${position}`}`;
  const sea =
    nearestSeaNm === undefined ? '' : `; seas from ${amountWords(nearestSeaNm, 'nm')} off, the nearest sea`;
  const head = ['from', 'for', 'wind', '', 'gusts', 'seas', 'period', 'squalls'];
  const pressures = steps.some(({ pressure }) => pressure !== null);
  return [
    `${place === '' ? where : named}${sea}`,
    ...headlines.map((headline) => `  ${headlineWords(headline)}`),
    ...aligned([
      [...head, ...(pressures ? ['pressure'] : [])],
      ...steps.map((step) => [...stepCells(step, zone), ...(pressures ? [pressureCell(step)] : [])]),
    ]).map((line) => `  ${line}`),
    ...(members.length === 0 ? [] : [`  ${membersWords(members)}`]),
  ];
}

/** How many members an ensemble has, and how far they go at their hardest. */
function membersWords(members: readonly Member[]): string {
  const most = (
    what: string,
    unit: string,
    of: (member: Member) => readonly (number | null)[] | undefined,
  ) => {
    const said = members.flatMap((member) => of(member) ?? []).filter((figure) => figure !== null);
    const highest = said.reduce((one, other) => Math.max(one, other), 0);
    return said.length === 0 ? '' : `, ${what} up to ${amountWords(highest, unit)}`;
  };
  const hardest = `${most('wind', 'kn', ({ wind }) => wind)}${most('seas', 'm', ({ seas }) => seas)}`;
  return `${members.length} members of an ensemble${hardest}`;
}

function headlineWords({ level, text }: Headline): string {
  return `${level === 'other' ? 'note' : level}: ${cleanLine(text, MOST_LETTERS)}`;
}

function stepCells(step: Step, zone: string): readonly string[] {
  const hours = (Date.parse(step.to) - Date.parse(step.from)) / MS_AN_HOUR;
  return [
    momentWords(Date.parse(step.from), zone, Date.parse(step.from)),
    durationWords(hours),
    spanWords(step.wind, 'kn'),
    directionCell(step),
    step.gust === null ? '-' : amountWords(step.gust, 'kn'),
    spanWords(step.seas, 'm'),
    step.period === null ? '-' : amountWords(step.period, 's'),
    step.squalls ?? '-',
  ];
}

/** Every direction said: `N, E`. One that is variable shows as such beside another. */
function directionCell({ dir, otherDirs = [] }: Step): string {
  if (otherDirs.length === 0) return dir === null ? '-' : pointLetters(dir);
  const letters = [dir, ...otherDirs].map((one) => (one === null ? 'variable' : pointLetters(one)));
  return [...new Set(letters)].join(', ');
}

function pressureCell({ pressure }: Step): string {
  return pressure === null ? '-' : amountWords(pressure, 'hPa');
}

function leftOver(title: string, lines: readonly string[]): readonly string[] {
  if (lines.length === 0) return [];
  const shown = lines.slice(0, MOST_NOT_READ).map((line) => `  ${cleanLine(line, MOST_LINE)}`);
  const more = lines.length - shown.length;
  return [
    `${title} (${lines.length}):`,
    ...shown,
    ...(more > 0 ? [`  and ${counted(more, 'more', 'more')}`] : []),
  ];
}
