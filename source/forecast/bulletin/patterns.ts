/** Pieces of patterns that wind and seas share, without groups. The prose is in capitals and single blanks. */

/** A figure of at most three digits, not part of a longer one. */
export const NUMBER = '(?<![\\d.])\\d{1,3}(?:\\.\\d{1,2})?(?![\\d]|\\.\\d)';

const SHORT_POINT = 'N(?:NE|NW|E|W)?|S(?:SE|SW|E|W)?|E(?:NE|SE)?|W(?:NW|SW)?';
const LONG_POINT = '(?:NORTH|SOUTH|EAST|WEST)(?:[ -]?(?:NORTH|SOUTH|EAST|WEST)){0,2}(?:ERLY)?';
/** A point of the compass. An apostrophe or a letter beside it makes it part of a word: the S of GALES. */
export const POINT = `(?<![A-Z0-9'])(?:${LONG_POINT}|${SHORT_POINT})(?![A-Z0-9'])`;
/** One point or a range of two. */
export const POINTS = `${POINT}(?: ?(?:TO|OR|AND|-|/) ?${POINT})?`;

export const KNOT_UNIT = "(?:KTS?|KNS?|KNOTS?|M/S|MPS|KM/H|KMH|KPH|MPH)(?![A-Z0-9/'])";
export const HEIGHT_UNIT = "(?:(?:FT|FEET|FOOT|MET(?:ER|RE)S?|M)(?![A-Z0-9/'])|'(?![A-Z0-9]))";

/** One or two figures with a unit, and the words that make one an upper bound: `15 TO 20 KT`, `UP TO 20 KT`, `2 FT OR LESS`, `10 KT TO 15 KT`. */
export function figures(unit: string): string {
  const bound = '(?:(?:UP TO|TO|LESS THAN|UNDER|BELOW|NOT EXCEEDING) )?';
  const first = `(?:BETWEEN )?${NUMBER}(?: ?${unit})?`;
  const second = `(?: ?(?:-|TO|OR|AND) ?${NUMBER})?`;
  return `${bound}${first}${second} ?${unit}(?: OR (?:LESS|UNDER|BELOW)\\b)?(?! ?(?:TO|-|OR|AND) ?#)`;
}
