import type { WriteStream } from 'node:tty';

const ENTER_ALTERNATE = '\u001b[?1049h';
const HOME = '\u001b[H';

/**
 * The same stream, but an alternate screen is entered with the cursor in its first cell. Ink 8.0.0 leaves the cursor where the
 * shell had it, so the first line would begin as far in as what was typed ahead.
 */
export function fromTheTop(stdout: WriteStream): WriteStream {
  const write = (data: string | Uint8Array, ...rest: never[]) =>
    stdout.write(
      typeof data === 'string' && data.startsWith(ENTER_ALTERNATE)
        ? ENTER_ALTERNATE + HOME + data.slice(ENTER_ALTERNATE.length)
        : data,
      ...rest,
    );
  return new Proxy(stdout, {
    get(target, name) {
      if (name === 'write') return write;
      const value: unknown = Reflect.get(target, name);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
