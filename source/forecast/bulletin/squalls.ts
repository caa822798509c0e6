import type { Step } from '../forecast.ts';
import { SQUALLS } from '../squalls.ts';
import type { Page } from './page.ts';

const STORM = '(?:SQUALLS?|T-?STORMS?|TSTMS?|THUNDERSTORMS?|THUNDER)';
const FEW =
  /\b(?:SLIGHT CHANCE|CHANCE|ISOLATED|ISOLD|FEW|POSSIBLE|PERHAPS|LOCAL|RISK|OCCASIONAL|OCCASIONALLY)\b/;
const LINE = new RegExp(`\\b(?:SQUALL LINE|LINES? OF (?:[A-Z]+ ){0,3}${STORM})\\b`);
const ANY = new RegExp(`\\b${STORM}\\b`);

/**
 * What a sentence says of squalls and thunderstorms; null where it names none: silence is not "none". Bare or scattered, numerous and likely ones count as
 * scattered; a chance of them as isolated.
 */
export function squallsIn({ text }: Page): Step['squalls'] {
  if (!ANY.test(text)) return null;
  if (LINE.test(text)) return 'line';
  if (/\bNO (?:SQUALLS?|THUNDERSTORMS?|TSTMS?)\b/.test(text)) return 'none';
  return FEW.test(text) && !/\b(?:SCATTERED|SCT|NUMEROUS|WIDESPREAD|LIKELY)\b/.test(text)
    ? 'isolated'
    : 'scattered';
}

/** The worst of several; null where none was named. */
export function worstSqualls(all: readonly Step['squalls'][]): Step['squalls'] {
  const ranks = all.filter((one) => one !== null).map((one) => SQUALLS.indexOf(one));
  return ranks.length === 0 ? null : (SQUALLS[Math.max(...ranks)] ?? null);
}
