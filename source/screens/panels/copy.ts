import { dayWords, durationWords } from '../../words/say.ts';
import { exactly, type Line, line, say } from '../lines.ts';
import { MARKS } from '../panel.ts';
import type { Sight } from '../sight.ts';

const HOUR_MS = 3_600_000;
/** A week of entries is more than anyone writes again from memory. Common practice, no source. */
const OLD_MS = 7 * 24 * HOUR_MS;

/** How long ago the boat folder was last copied to the second place and the copy checked, where one is named: at the `top` where that is long ago, else among the checks. */
export function copyLines({ model }: Sight, where: 'top' | 'checks', columns: number): Line[] {
  const { copy, now, zone } = model;
  if (!copy) return [];
  const state = copy.at === null || now - copy.at > OLD_MS ? 'watch' : 'fit';
  if ((state === 'watch') !== (where === 'top')) return [];
  const words = `last checked copy: ${copy.at === null ? 'none yet; leaving the board makes one' : agoWords(copy.at, now, zone)}`;
  return [exactly(line(say('  '), say(`${MARKS[state]} `, state), say(words)), columns)];
}

/** By a clock that was set back since, the day itself. */
function agoWords(at: number, now: number, zone: string): string {
  return at > now ? `on ${dayWords(at, zone)}` : durationWords((now - at) / HOUR_MS);
}
