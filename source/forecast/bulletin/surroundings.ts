import { type Page, setAside, take } from './page.ts';
import { POINT } from './patterns.ts';

const TO_CLAUSE_END = '(?:[^.,;~]|\\.(?=\\d)){0,80}';
const SOME_POINTS = `${POINT}(?:(?: TO | OR | AND |-|/)${POINT}){0,3}`;
const PARTS =
  'OF|PARTS?|PORTIONS?|HALF|SIDE|SECTIONS?|END|COASTS?|WATERS|ENTRANCE|QUADRANTS?|SEMICIRCLES?|THIRD|FACING';

/** What is neither wind nor sea but has figures like theirs: shown as not read. */
const ASIDE = [
  `\\b(?:VSBYS?|VISIBILITY|VISIBILITIES|VIS)\\b${TO_CLAUSE_END}`,
  `\\bCURRENTS?\\b${TO_CLAUSE_END}`,
  `\\b(?:WATER LEVELS?|LOW WATER|HIGH WATER|TIDES?|SURF|BREAKERS?|BREAKING WAVES?|CEILINGS?)\\b${TO_CLAUSE_END}`,
  `\\b(?:HIGHEST|MAXIMUM|MAX|INDIVIDUAL|LARGEST) WAVES?\\b${TO_CLAUSE_END}`,
  `\\b(?:MOV(?:ES?|ING)|DRIFT(?:S|ING))\\b[^.~]{0,40}?\\d{1,3} ?KTS?\\b`,
].map((pattern) => new RegExp(pattern, 'g'));

/** Where and when a clause holds: read, and left out of account, since the worst of all clauses is taken. `8S` behind a height is a period. */
const WHERE_AND_WHEN = [
  '\\b\\d{1,3}(?:\\.\\d)?[NS] ?\\d{1,3}(?:\\.\\d)?[EW]\\b',
  "(?<!(?:(?<![A-Z])(?:FT|FEET|FOOT|M|METERS?|METRES?|AT)|') ?)\\b\\d{1,3}(?:\\.\\d)?[NSEW]\\b",
  `\\b\\d{1,3}(?:\\.\\d)?(?:(?: TO |-)\\d{1,3})? ?(?:NM|NAUTICAL MILES?|MILES?)\\b(?: ${SOME_POINTS}(?= ?(?:,|~|$|AND|QUADRANT|SEMICIRCLE)))?`,
  `${SOME_POINTS} (?:${PARTS})\\b`,
  '\\b\\d{3,4} ?(?:UTC|GMT|Z)\\b(?: [A-Z]{3} \\d{1,2}\\b)?',
  '\\b\\d{1,2}(?::?\\d\\d)? ?(?:AM|PM)\\b',
].map((pattern) => new RegExp(pattern, 'g'));

/** Clears a sentence of what surrounds its figures, so that no mile, hour or coast is taken for a wind. */
export function clearSurroundings(page: Page): void {
  for (const pattern of ASIDE) setAside(page, pattern);
  for (const pattern of WHERE_AND_WHEN) take(page, pattern, () => true);
}
