import { forcesKn } from '../beaufort.ts';
import { pointFrom } from '../compass.ts';
import { knotsIn } from '../units.ts';
import { type Figure, figureIn, MOST_KN } from './figure.ts';
import { type Page, take } from './page.ts';
import { figures, KNOT_UNIT, NUMBER, POINT, POINTS } from './patterns.ts';

/** Where the wind comes from, degrees true: one point or the ends of a range; null is variable or cyclonic; empty is not said. */
export type Dirs = readonly (number | null)[];

/** The wind of one clause, in knots. */
export interface WindClause extends Figure {
  readonly dirs: Dirs;
  /** Known from a word, as in gale force; the figure is what the word means. */
  readonly fromWord?: true;
  /** No unit was said and it is taken for knots. */
  readonly unitTaken?: true;
}

/** What bare numbers behind a direction are in a text. */
export type BareNumbers = 'knots' | 'forces';

/** What words for wind mean, in knots. "Light": 10 knots or less (common practice, no source); the others as the NWS defines its warnings. */
const WORDS_KN: { readonly [word: string]: readonly [low: number, high: number] } = {
  LIGHT: [0, 10],
  GALE: [34, 47],
  STORM: [48, 63],
  HURRICANE: [64, 64],
};

const OTHERWISE = `(?! ?(?:\\d|${KNOT_UNIT}|(?:TO|-|OR|AND) ?[\\d#]|%|PERCENT|MILES?|NM|KM|MB|HPA|FT|FEET|FOOT|MET(?:ER|RE)S?|M\\b|HOURS?|HRS?|S(?:EC|\\b)|DEG|[AP]M\\b|UTC|Z\\b))`;
const FORCE = '(?<![\\d.])1?\\d(?![\\d.])';
const FORCE_WORD =
  '(?:(?:BEAUFORT )?FORCE|BFT|BF|F|(?:NEAR |SEVERE |STRONG )?GALE|(?:VIOLENT )?STORM|HURRICANE(?: FORCE)?)';
const UP_TO_FORCE = `(?: ?(?:TO|OR|-) ?(?:${FORCE_WORD} ?)?${FORCE})?`;
/** What stands before a wind without a unit: `NW 15`, `winds 15`, `gales 35`, `increasing to 30`. */
const BEFORE_BARE =
  '\\b(?:WINDS?|GALES?|(?:GALE|STORM) FORCE|(?:INCREASING|RISING|STRENGTHENING|BECOMING|EASING|DIMINISHING|DECREASING)(?: TO| NEAR)?) |';
const BARE = {
  knots: `(?<=${BEFORE_BARE}${POINT} )(?:(?:TO|BETWEEN|AROUND|ABOUT|NEAR) )?${NUMBER}(?: ?(?:TO|-|OR|AND) ?${NUMBER})?${OTHERWISE}`,
  forces: `${FORCE}${UP_TO_FORCE}${OTHERWISE}`,
};
const FIGURE_BEHIND = '(?! (?:WINDS? )?(?:(?:TO|OF|UP TO|AROUND|BETWEEN) )?\\d)';
const WORD = `(?<!TROPICAL )\\b(?:GALE|STORM|HURRICANE) FORCE\\b${FIGURE_BEHIND}|\\bGALES\\b${FIGURE_BEHIND}`;

const tokens = (bare: BareNumbers) =>
  new RegExp(
    [
      `(?<knots>${figures(KNOT_UNIT)})`,
      `(?<force>\\b${FORCE_WORD} ?${FORCE}${UP_TO_FORCE}${OTHERWISE})`,
      `(?<points>${POINTS})`,
      '(?<variable>\\bVARIABLE\\b|\\bCYCLONIC\\b)',
      `(?<word>${WORD})`,
      `(?<bare>${BARE[bare]})`,
    ].join('|'),
    'g',
  );
const TOKENS = { knots: tokens('knots'), forces: tokens('forces') };

const IS_OF_WIND = new RegExp(
  `${POINT}|\\bVARIABLE\\b|\\bCYCLONIC\\b|\\bWINDS?\\b|\\bFORCE\\b|\\bGALES?\\b|${KNOT_UNIT}`,
);
const TURNS =
  /\b(?:VEERING|BACKING|BECOMING|BECOME|SHIFTING|TURNING|SWINGING|SWITCHING|GOING|THEN)(?: (?:TO|THE|MAINLY|MORE|GRADUALLY))*,? $/;

/** The winds a sentence names, each with its directions; blanked out of it. A direction the wind turns to without a figure keeps the figure before it. */
export function takeWind(page: Page, bare: BareNumbers): readonly WindClause[] {
  if (!IS_OF_WIND.test(page.text)) return [];
  const clauses: WindClause[] = [];
  let waiting: readonly { readonly dirs: Dirs; readonly turns: boolean }[] = [];
  take(page, TOKENS[bare], ({ groups = {}, input, index }) => {
    const dirs = groups.variable === undefined ? directions(groups.points) : [null];
    if (dirs) {
      const turns = TURNS.test(input.slice(Math.max(0, index - 50), index));
      waiting = [...waiting.filter((before) => turns || before.turns), { dirs, turns }];
      return true;
    }
    const figure = figureOf(groups, bare);
    if (!figure || figure.high > MOST_KN) return false;
    const from = waiting.length > 0 ? waiting.map((one) => one.dirs) : [clauses.at(-1)?.dirs ?? []];
    clauses.push(...from.map((one) => ({ ...figure, dirs: one })));
    waiting = [];
    return true;
  });
  const last = clauses.at(-1) ?? light(page.text);
  if (!last) return [];
  const turned = waiting.filter(({ turns }) => turns).map(({ dirs }) => ({ ...last, dirs }));
  if (clauses.length > 0) return [...clauses, ...turned];
  return [{ ...last, dirs: waiting[0]?.dirs ?? last.dirs }, ...turned];
}

type Groups = { readonly [name: string]: string | undefined };

function figureOf(
  { knots, force, word, bare: number }: Groups,
  bare: BareNumbers,
): Omit<WindClause, 'dirs'> | null {
  if (knots !== undefined) return figureIn(knots, knotsIn);
  if (word !== undefined) {
    const [low, high] = WORDS_KN[/GALE|STORM|HURRICANE/.exec(word)?.[0] ?? ''] ?? [0, 0];
    return { low, high, upTo: false, fromWord: true };
  }
  if (number !== undefined && bare === 'knots') return { ...figureIn(number, knotsIn), unitTaken: true };
  const [lower = 0, upper] = ((force ?? number ?? '').match(/\d+/g) ?? []).map(Number);
  const range = forcesKn(lower, upper);
  return range && { low: range[0], high: range[1], upTo: false };
}

function light(text: string): WindClause | null {
  if (!/\bLIGHT\b[^~]{0,20}\b(?:WINDS?|BREEZES?|~)|\bWINDS? (?:[A-Z]+ )?LIGHT\b|\bLIGHT AND ~/.test(text))
    return null;
  const [low, high] = WORDS_KN.LIGHT ?? [0, 0];
  return { low, high, upTo: false, dirs: [null], fromWord: true };
}

/** The degrees of one or two points; null where the words are no points after all. */
function directions(points: string | undefined): Dirs | null {
  if (points === undefined) return null;
  const degrees = points.match(POINT_IN)?.map(pointFrom) ?? [];
  return degrees.every((one) => typeof one === 'number') && degrees.length > 0 ? degrees : null;
}

const POINT_IN = new RegExp(POINT, 'g');
