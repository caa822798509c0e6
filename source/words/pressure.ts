/** The most a change over 3 hours can be for its word, hPa: the words of British forecasts (Met Office marine glossary; steady is less than 0.1). */
const WORDS: readonly (readonly [most: number, word: string])[] = [
  [1.5, ' slowly'],
  [3.5, ''],
  [6, ' quickly'],
];

/** A change of pressure over 3 hours, hPa, in the words of forecasts: `falling quickly`. */
export function tendencyWords(hPaIn3Hours: number): string {
  const tenths = Math.round(Math.abs(hPaIn3Hours) * 10) / 10;
  if (tenths < 0.1) return 'steady';
  const word = WORDS.find(([most]) => tenths <= most)?.[1] ?? ' very rapidly';
  return `${hPaIn3Hours > 0 ? 'rising' : 'falling'}${word}`;
}
