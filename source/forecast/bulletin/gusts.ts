import { knotsIn, tidy } from '../units.ts';
import { figureIn, MOST_KN } from './figure.ts';
import { type Page, take } from './page.ts';
import { KNOT_UNIT, NUMBER } from './patterns.ts';

const BETWEEN =
  '(?: (?:UP|TO|NEAR|AROUND|ABOUT|OF|AT|AS|HIGH|EXCEEDING|OVER|ABOVE|REACHING|REACH|IN|EXCESS|BETWEEN|FROM|LOCALLY|POSSIBLY|MAY|COULD)){0,5}';
const GUST = new RegExp(
  `(?:(?:GALE|STORM|HURRICANE) FORCE )?\\bGUST(?:S|ING|ED|Y)?\\b${BETWEEN} (${NUMBER}(?: ?(?:TO|-|OR|AND) ?${NUMBER})?(?: ?${KNOT_UNIT})?)`,
  'g',
);
/** `15G25`, `15-20 G28 KT`, `20 KTS G25`: the wind before it stays to be read. */
const LETTER = new RegExp(
  `(?<![\\d.])(\\d{1,3}(?: ?- ?\\d{1,3})?)(?: ?${KNOT_UNIT})? ?G ?(\\d{1,3}(?:\\.\\d)?)(?: ?(${KNOT_UNIT}))?(?![A-Z0-9]|\\.\\d)`,
  'g',
);
const WORD = /(?:\bGUST(?:S|ING|Y)?(?: UP)? TO )?\b(GALE|STORM|HURRICANE) FORCE(?: GUSTS?\b)?/g;
/** Lowest mean wind of gale, storm and hurricane force as the NWS defines them, in knots. */
const FORCE_KN: { readonly [word: string]: number } = { GALE: 34, STORM: 48, HURRICANE: 64 };

export interface Gust {
  readonly kn: number;
  /** Said in a word alone; the figure is the least it can mean. */
  readonly fromWord: boolean;
}

/** The gusts a sentence names, in knots; blanked out of it. Without a unit they are knots. */
export function takeGusts(page: Page): readonly Gust[] {
  const gusts: Gust[] = [];
  page.text = page.text.replace(LETTER, (all, wind: string, gust: string, unit = 'KT') => {
    const kn = tidy(Number(gust) * (knotsIn(unit) ?? 1));
    if (kn > MOST_KN) return all;
    gusts.push({ kn, fromWord: false });
    return `${wind} ${unit}`;
  });
  take(page, GUST, ([, figure = '']) => {
    const { high } = figureIn(figure, knotsIn);
    if (high <= MOST_KN) gusts.push({ kn: high, fromWord: false });
    return high <= MOST_KN;
  });
  take(page, WORD, ([phrase, word = '']) => {
    if (!phrase.includes('GUST')) return false;
    gusts.push({ kn: FORCE_KN[word] ?? 0, fromWord: true });
    return true;
  });
  return gusts;
}
