import type { Figure } from './figure.ts';
import { type Page, take } from './page.ts';

/** Heights of sea-state words, metres: WMO code table 3700, whose bounds public forecasts use; 14 m and above is phenomenal. */
const WORDS: { readonly [word: string]: readonly [low: number, high: number] } = {
  CALM: [0, 0.1],
  SMOOTH: [0.1, 0.5],
  SLIGHT: [0.5, 1.25],
  MODERATE: [1.25, 2.5],
  ROUGH: [2.5, 4],
  'VERY ROUGH': [4, 6],
  HIGH: [6, 9],
  'VERY HIGH': [9, 14],
  PHENOMENAL: [14, 14],
};
const ONE = '(?:VERY ROUGH|VERY HIGH|CALM|SMOOTH|SLIGHT|MODERATE|ROUGH|HIGH|PHENOMENAL)';
const PAIR = new RegExp(`\\b(${ONE})(?: (?:OR|TO) (${ONE}))?\\b`, 'g');
/** Said of visibility, never of the sea. */
const NOT_SEA = /\b(?:GOOD|POOR|FOG|RAIN|SHOWERS?|DRIZZLE|SNOW|HAZE|WIND|VISIBILITY|ICING|PRESSURE|LOW)\b/;

/** The heights a sentence of sea-state words names, in metres; blanked out of it. None where the words are of visibility or weather. */
export function takeSeaWords(page: Page): readonly Figure[] {
  if (NOT_SEA.test(page.text)) return [];
  const figures: Figure[] = [];
  take(page, PAIR, ([, first = '', second = first]) => {
    const low = WORDS[first]?.[0] ?? 0;
    const high = WORDS[second]?.[1] ?? 0;
    if (low <= high) figures.push({ low, high, upTo: false });
    return low <= high;
  });
  return figures;
}
