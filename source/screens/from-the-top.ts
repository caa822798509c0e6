import type { WriteStream } from 'node:tty';
import { withMethod } from './with-method.ts';

const ENTER_ALTERNATE = '\u001b[?1049h';
const HOME = '\u001b[H';

/**
 * The same stream, but an alternate screen is entered with the cursor in its first cell. Ink 8.0.0 leaves the cursor where the
 * shell had it, so the first line would begin as far in as what was typed ahead.
 */
export function fromTheTop(stdout: WriteStream): WriteStream {
  return withMethod(stdout, 'write', (data: string | Uint8Array, ...rest: never[]) =>
    stdout.write(
      typeof data === 'string' && data.startsWith(ENTER_ALTERNATE)
        ? ENTER_ALTERNATE + HOME + data.slice(ENTER_ALTERNATE.length)
        : data,
      ...rest,
    ),
  );
}
