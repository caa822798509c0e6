import type { Step } from '../forecast.ts';
import type { Figure } from './figure.ts';
import { type Gust, takeGusts } from './gusts.ts';
import { leftOver, pagesOf } from './page.ts';
import { takeSeaWords } from './sea-words.ts';
import { type Height, takeSeas } from './seas.ts';
import { squallsIn, worstSqualls } from './squalls.ts';
import { clearSurroundings } from './surroundings.ts';
import { type BareNumbers, takeWind, type WindClause } from './wind.ts';

/** All that was found in the prose of one period, clause by clause. */
export interface Reading {
  readonly wind: readonly WindClause[];
  readonly gusts: readonly Gust[];
  readonly heights: readonly Height[];
  /** Periods said by themselves, seconds. */
  readonly periods: readonly number[];
  /** Heights known from sea-state words, metres. */
  readonly seaWords: readonly Figure[];
  readonly squalls: Step['squalls'];
  /** Every phrase with a digit in it that was not read. */
  readonly notRead: readonly string[];
}

/**
 * Reads the prose of one period: `NW wind 20 to 25 kt with gusts up to 35 kt. Seas 8 to 10 ft.` Marine prose has no grammar, so phrases are looked for in order,
 * each blanking what it read, and every digit left over is given back.
 */
export function readProse(prose: string, bare: BareNumbers): Reading {
  const wind: WindClause[] = [];
  const gusts: Gust[] = [];
  const heights: Height[] = [];
  const periods: number[] = [];
  const seaWords: Figure[] = [];
  const squalls: Step['squalls'][] = [];
  const notRead: string[] = [];
  for (const page of pagesOf(prose)) {
    squalls.push(squallsIn(page));
    clearSurroundings(page);
    gusts.push(...takeGusts(page));
    const seas = takeSeas(page);
    heights.push(...seas.heights);
    periods.push(...seas.periods);
    const winds = takeWind(page, bare);
    wind.push(...winds);
    // The sea state stands before visibility, which has words of its own and some of the same.
    if (bare === 'forces' && winds.length === 0 && seaWords.length === 0)
      seaWords.push(...takeSeaWords(page));
    notRead.push(...leftOver(page));
  }
  return { wind, gusts, heights, periods, seaWords, squalls: worstSqualls(squalls), notRead };
}

/** What bare numbers are in a text: forces where no wind in it has a unit of speed. */
export function bareNumbersIn(text: string): BareNumbers {
  return /\d ?(?:G ?\d|KTS?|KNS?|KNOTS?|M\/S|MPS|KM\/H|KMH|KPH|MPH)(?![A-Z])/i.test(text)
    ? 'knots'
    : 'forces';
}
