import { metresIn } from '../units.ts';
import { type Figure, figureIn, MOST_M, MOST_S } from './figure.ts';
import { type Page, take } from './page.ts';
import { figures, HEIGHT_UNIT, NUMBER, POINTS } from './patterns.ts';

/**
 * One height a text gives. `all`: the whole sea; `swell` and `wind waves`: parts of it; `part`: a part whose kind is not said; `occasional`: the higher waves among
 * those the rest means.
 */
export interface Height extends Figure {
  readonly of: 'all' | 'swell' | 'wind waves' | 'part' | 'occasional';
  /** Seconds; the shortest said with it. */
  readonly period: number | null;
}

const HEAD = '\\b(?:WAVE DETAIL|WIND[ -]?WAVES?|WIND SEAS?|SWELLS?|COMBINED SEAS?|SEAS?|WAVES?)\\b';
const PERIOD_WORD = '(?:(?:DOMINANT|PEAK|MEAN|AVERAGE) )?(?:PERIODS?(?: (?:OF|AROUND|NEAR|ABOUT|AT))? )?';
const TOKEN = new RegExp(
  [
    `(?<head>${HEAD})`,
    `(?<often>\\bOCCASIONAL(?:LY)?(?: WAVES?| SEAS?)?(?= (?:UP )?(?:TO )?${NUMBER}))`,
    `(?<height>${figures(HEIGHT_UNIT)})(?<swell>(?: ${POINTS})? SWELLS?\\b)?`,
    `(?<period>(?:(?:AT|EVERY|WITH A|WITH) )?${PERIOD_WORD}${NUMBER}(?: ?(?:TO|-|OR) ?${NUMBER})? ?(?:SECONDS?|SECS?|S)(?![A-Z0-9]))`,
    `(?<from>${POINTS}(?= (?:SWELL|WIND[ -]?WAVE|${figures(HEIGHT_UNIT)})))`,
  ].join('|'),
  'g',
);
const hasHead = new RegExp(`${HEAD}|\\bPERIODS?\\b`);

/** What a sentence says of the sea: heights, and periods that stand without one ("dominant period 9 seconds"). */
export interface Seas {
  readonly heights: readonly Height[];
  readonly periods: readonly number[];
}

/** The heights of sea a sentence names, in metres, with their periods; blanked out of it. In a sentence without a word for sea nothing is taken for one. */
export function takeSeas(page: Page): Seas {
  const heights: Height[] = [];
  const periods: number[] = [];
  if (!hasHead.test(page.text)) return { heights, periods };
  let of: Height['of'] | null = null;
  let often = false;
  take(page, TOKEN, ({ groups = {} }) => {
    const { head, height, period } = groups;
    if (head !== undefined) of = kindOf(head);
    if (groups.often !== undefined) often = true;
    if (height !== undefined) {
      const kind = often ? 'occasional' : groups.swell !== undefined ? 'swell' : (of ?? 'all');
      const figure = figureIn(height, metresIn);
      if (figure.high > MOST_M) return false;
      heights.push({ ...figure, of: kind, period: null });
      if (often) page.setAside.push(`OCCASIONALLY ${height}`);
      often = false;
    }
    if (period !== undefined) {
      const seconds = Math.min(...(period.match(/\d+(?:\.\d+)?/g) ?? []).map(Number));
      if (seconds > MOST_S) return false;
      const last = heights.pop();
      if (last) heights.push({ ...last, period: Math.min(seconds, last.period ?? seconds) });
      else periods.push(seconds);
    }
    return true;
  });
  return { heights, periods };
}

function kindOf(head: string): Height['of'] {
  if (head === 'WAVE DETAIL') return 'part';
  if (head.startsWith('SWELL')) return 'swell';
  return head.startsWith('WIND') ? 'wind waves' : 'all';
}
