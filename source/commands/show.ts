import type { Outside } from '../outside.ts';
import type { Trouble } from '../trouble.ts';
import { sayTrouble } from '../words/troubles.ts';
import { statusOf } from './status.ts';

/** Says every trouble on standard error and returns the exit status they call for. */
export function complainOf(troubles: readonly Trouble[], outside: Outside): number {
  outside.complain(`${troubles.map((trouble) => sayTrouble(trouble)).join('\n\n')}\n`);
  return statusOf(troubles);
}

/** A document as one JSON text ending in a line feed. Marks a terminal might obey (bidi, C1 and other unseen characters) stand as \u escapes: the value is the same, the screen is safe. */
export function jsonText(document: unknown): string {
  const text = JSON.stringify(document, null, 2);
  return `${text.replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cn}\u2028\u2029]/gu, escapeUnlessLineFeed)}\n`;
}

function escapeUnlessLineFeed(character: string): string {
  if (character === '\n') return character;
  return Array.from(
    { length: character.length },
    (_, i) => `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`,
  ).join('');
}
