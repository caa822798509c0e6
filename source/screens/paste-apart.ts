import type { ReadStream } from 'node:tty';
import { withMethod } from './with-method.ts';

const ESCAPES_BEFORE_A_PASTE = /\u001b+(?=\u001b\[200~)/gu;
/** The same key as terminals with the fuller keyboard protocol send it: it cannot be taken for the beginning of another. */
const ESCAPE_ALONE = '\u001b[27u';

/**
 * The same stream, but Escape right before a paste is a key of its own. Ink 8.0.0 takes the two together for one key it does not know,
 * and what is pasted for typing: a line end in it would be Enter.
 */
export function pasteApart(stdin: ReadStream): ReadStream {
  return withMethod(stdin, 'read', (size?: number) => {
    const data: unknown = stdin.read(size);
    return typeof data === 'string'
      ? data.replace(ESCAPES_BEFORE_A_PASTE, (escapes) => ESCAPE_ALONE.repeat(escapes.length))
      : data;
  });
}
