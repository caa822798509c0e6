import { bad, good, type Result } from '../trouble.ts';
import { forcesKn } from './beaufort.ts';
import { MOST_KN, MOST_M } from './bulletin/figure.ts';
import { bareNumbersIn, readProse } from './bulletin/prose.ts';
import { summaryOf } from './bulletin/summary.ts';
import { pointFrom, type TwoPoints } from './compass.ts';
import type { BareUnits } from './content.ts';
import type { ProblemKind, Step } from './forecast.ts';
import { knotsIn, metresIn, tidy } from './units.ts';

export type RowFigures = Pick<
  Step,
  'wind' | 'dir' | 'otherDirs' | 'gust' | 'seas' | 'period' | 'periodKind' | 'pressure' | 'squalls'
>;

/** A row as it was understood. */
export interface TypedRow {
  /** Null: not heard. */
  readonly figures: RowFigures | null;
  readonly odd: readonly ProblemKind[];
  readonly notRead: readonly string[];
  /** The height of the seas, if any, was typed with its unit. */
  readonly heightsNamed: boolean;
  /** A direction to be asked about: its letters differ by language. */
  readonly ask: { readonly text: string; readonly choices: readonly string[] } | null;
}

export interface RowGiven {
  /** From 1, for troubles to name it by. */
  readonly row: number;
  /** The row before it that was heard, for `=`. */
  readonly above: RowFigures | null;
  readonly bare: BareUnits;
}

const LONGEST = 2000;
const NOT_HEARD: TypedRow = { figures: null, odd: [], notRead: [], heightsNamed: true, ask: null };
const NOTHING: RowFigures = {
  ...{ wind: null, dir: null, gust: null, seas: null },
  ...{ period: null, periodKind: null, pressure: null, squalls: null },
};

/**
 * One row as it is typed while a broadcast goes on: `se 15-20 g28 4-6 7s`, `f5-6 sw 2.5m`, `=` as above (what follows differs), `.` not heard. The first bare figure is
 * wind, the second seas, in the units of `bare`; a unit beside wind or gusts is that of both. A sentence is read as a bulletin's: in knots.
 */
export function readRow(typed: string, given: RowGiven): Result<TypedRow> {
  const text = typed.slice(0, LONGEST).trim();
  if (text === '' || text === '.') return good(NOT_HEARD);
  if (isSentence(text)) return sentence(text, given.row);
  const fields: Fields = {
    figures: NOTHING,
    said: new Map(),
    odd: [],
    bare: 0,
    heightsNamed: true,
    ask: null,
  };
  const words = wordsOf(text);
  if (words[0] === '=') {
    if (given.above === null) return bad({ kind: 'nothing above', row: given.row });
    fields.figures = given.above;
    words.shift();
  }
  const units = { ...given.bare, wind: windUnitIn(words) ?? given.bare.wind };
  for (const word of words) {
    const read = readWord(word, fields, units);
    if (read === null) return bad({ kind: 'row not understood', row: given.row, text, word });
    const first = fields.said.get(read);
    if (first !== undefined)
      return bad({ kind: 'row says two', row: given.row, text, what: read, first, second: word });
    fields.said.set(read, word);
  }
  const { figures, odd, heightsNamed, ask } = fields;
  return good({ figures, odd, notRead: [], heightsNamed, ask });
}

type What = 'direction' | 'wind' | 'gust' | 'seas' | 'period' | 'pressure' | 'squalls';

interface Fields {
  figures: RowFigures;
  /** What was said, and in which word. */
  readonly said: Map<What, string>;
  readonly odd: ProblemKind[];
  bare: number;
  heightsNamed: boolean;
  ask: TypedRow['ask'];
}

/** Words with their units and ranges drawn together: `15 to 20 kt` is one, `gusting 28` is g28. */
function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/(\d),(?=\d)/g, '$1.')
    .replace(/\bgust(?:s|ing)?(?: (?:up )?to)? ?(?=\d)/g, 'g')
    .replace(/(\d) ?(?:-|to) ?(?=\d)/g, '$1-')
    .replace(/\b(?:up )?to ?(?=\d)/g, '<')
    .replace(/\b(f|force|g|<) (?=\d)/g, '$1')
    .replace(/(\d) (?=(?:kts?|kn|knots?|m\/s|ft|feet|m|s|sec|seconds?|hpa|mb)(?:\s|,|$))/g, '$1')
    .split(/[\s,;]+/)
    .filter((word) => word !== '');
}

/** The unit said beside the wind or the gusts of a row; null where there is none. */
function windUnitIn(words: readonly string[]): string | null {
  return words.flatMap((word) => WIND.exec(word)?.[5] ?? GUST.exec(word)?.[3] ?? [])[0] ?? null;
}

/** What bare figures of this row are in. */
interface RowUnits {
  readonly wind: string;
  readonly seas: BareUnits['seas'];
}

/** Reads one word into the fields; what it was of, or null where it is not understood. */
function readWord(word: string, fields: Fields, units: RowUnits): What | null {
  return (
    readDirection(word, fields) ??
    readWind(word, fields, units) ??
    readBare(word, fields, units) ??
    readGust(word, fields, units) ??
    readSeas(word, fields) ??
    readOther(word, fields)
  );
}

function readDirection(word: string, fields: Fields): What | null {
  if (/^(?:var|vrb|variable|cyc|cyclonic)$/.test(word)) return set(fields, 'direction', { dir: null });
  const degrees = /^(\d{1,3})(?:°|deg|t)$/.exec(word);
  if (degrees && Number(degrees[1]) <= 360) return set(fields, 'direction', { dir: Number(degrees[1]) });
  const points = word.split(/[-/](?=[a-z])/).map(pointFrom);
  if (points.length > 2 || points.some((point) => point === null)) return null;
  const unclear = points.find((point): point is TwoPoints => typeof point === 'object');
  if (unclear) fields.ask = { text: word, choices: unclear.choices };
  const [dir = null, other] = points.filter((point) => typeof point === 'number');
  return set(fields, 'direction', { dir, ...(other === undefined ? {} : { otherDirs: [other] }) });
}

const RANGE = '(<?)(\\d{1,3}(?:\\.\\d{1,2})?)(?:-(\\d{1,3}(?:\\.\\d{1,2})?))?';
const WIND = new RegExp(`^${RANGE}(?:g(\\d{1,3}))?(kts?|kn|knots?|m/s)?$`);
const GUST = /^g(\d{1,3})(?:-(\d{1,3}))?(kts?|kn|knots?|m\/s)?$/;
const SEAS = new RegExp(`^${RANGE}(ft|feet|m|')$`);

function readWind(word: string, fields: Fields, units: RowUnits): What | null {
  const forces = /^(?:f|bf|bft|force)(\d{1,2})(?:-f?(\d{1,2}))?$/.exec(word);
  if (forces) {
    const wind = forcesKn(Number(forces[1]), forces[2] === undefined ? undefined : Number(forces[2]));
    fields.bare = Math.max(fields.bare, 1);
    return wind && set(fields, 'wind', { wind });
  }
  const found = WIND.exec(word);
  if (!found || (found[4] === undefined && found[5] === undefined)) return null;
  return setWind(found, fields, units);
}

function setWind(
  [, bound, low = '', high, gust, unit]: readonly (string | undefined)[],
  fields: Fields,
  units: RowUnits,
): What | null {
  const each = knotsIn(unit ?? units.wind) ?? 1;
  const wind = range(low, high, each, fields);
  fields.bare = Math.max(fields.bare, 1);
  if (wind[1] > MOST_KN || (bound === '<' && high !== undefined)) return null;
  set(fields, 'wind', { wind });
  if (gust !== undefined) {
    fields.said.set('gust', `g${gust}`);
    set(fields, 'gust', { gust: tidy(Number(gust) * each) });
  }
  return 'wind';
}

/** Figures without a unit: wind first, then seas. */
function readBare(word: string, fields: Fields, units: RowUnits): What | null {
  const found = new RegExp(`^${RANGE}$`).exec(word);
  if (!found) return null;
  if (fields.bare === 0) return setWind(found, fields, units);
  fields.heightsNamed = false;
  return readSeas(`${word}${units.seas}`, fields);
}

function readGust(word: string, fields: Fields, units: RowUnits): What | null {
  const found = GUST.exec(word);
  if (!found) return null;
  const [, first = '', second = first, unit = units.wind] = found;
  const gust = tidy(Math.max(Number(first), Number(second)) * (knotsIn(unit) ?? 1));
  return gust > MOST_KN ? null : set(fields, 'gust', { gust });
}

function readSeas(word: string, fields: Fields): What | null {
  const found = SEAS.exec(word);
  if (!found) return null;
  const [, , low = '', high, unit = 'm'] = found;
  const seas = range(low, high, metresIn(unit) ?? 1, fields);
  fields.bare = 2;
  return seas[1] > MOST_M ? null : set(fields, 'seas', { seas });
}

function readOther(word: string, fields: Fields): What | null {
  const seconds = /^(\d{1,2}(?:\.\d)?)(?:-\d{1,2})?s(?:ec|econds?)?$/.exec(word);
  if (seconds) return set(fields, 'period', { period: Number(seconds[1]), periodKind: null });
  const pressure = /^(\d{3,4}(?:\.\d)?)(?:hpa|mb)$/.exec(word);
  if (pressure && Number(pressure[1]) >= 850 && Number(pressure[1]) <= 1100)
    return set(fields, 'pressure', { pressure: Number(pressure[1]) });
  const squalls = SQUALLS[word];
  return Object.hasOwn(SQUALLS, word) && squalls !== undefined ? set(fields, 'squalls', { squalls }) : null;
}

const SQUALLS: { readonly [word: string]: Step['squalls'] } = {
  ...{ isolated: 'isolated', isol: 'isolated', scattered: 'scattered', scat: 'scattered' },
  ...{ sq: 'scattered', squalls: 'scattered', tstms: 'scattered', 'squall-line': 'line', line: 'line' },
};

function set(fields: Fields, what: What, figures: Partial<RowFigures>): What {
  fields.figures = { ...fields.figures, ...figures };
  return what;
}

/** Both ends of a range in knots or metres; typed backwards it is turned, and said. */
function range(
  low: string,
  high: string | undefined,
  each: number,
  fields: Fields,
): readonly [number, number] {
  const [a, b] = [low, high ?? low].map((digits) => tidy(Number(digits) * each)) as [number, number];
  if (a > b) fields.odd.push('range backwards');
  return [Math.min(a, b), Math.max(a, b)];
}

/** Whether a row is rather a sentence of a bulletin. */
export function isSentence(text: string): boolean {
  return /\b(?:winds?|seas?|waves?|swells?|becoming|veering|backing|occasionally|perhaps|gale)\b/i.test(text);
}

function sentence(text: string, row: number): Result<TypedRow> {
  const isForces =
    bareNumbersIn(text) === 'forces' && (text.match(/\d+/g) ?? []).every((digits) => Number(digits) <= 12);
  const read = readProse(text, isForces ? 'forces' : 'knots');
  const { figures, odd } = summaryOf(read);
  if (figures.wind === null && figures.seas === null)
    return bad({ kind: 'row not understood', row, text, word: text.slice(0, 60) });
  return good({
    figures: { ...figures, pressure: null },
    odd,
    notRead: read.notRead,
    heightsNamed: true,
    ask: null,
  });
}
