import type { Host } from './host.ts';
import { withMethod } from './with-method.ts';

/** The terminal's streams, which can be made quiet. */
interface Quiet extends Pick<Host, 'stdin' | 'stdout'> {
  /** From here on nothing is written and no mode is changed; whoever tries is told that it was done. */
  hush(): void;
}

/** The host's streams for whoever draws: so that a board that ends while the terminal is somebody else's leaves it alone. */
export function quietOf({ stdin, stdout }: Pick<Host, 'stdin' | 'stdout'>): Quiet {
  let hushed = false;
  return {
    stdin: withMethod(stdin, 'setRawMode', (on: boolean) => (hushed ? stdin : stdin.setRawMode(on))),
    stdout: withMethod(stdout, 'write', (data: string | Uint8Array, ...rest: never[]) => {
      if (!hushed) return stdout.write(data, ...rest);
      const done: unknown = rest.at(-1);
      if (typeof done === 'function') done();
      return true;
    }),
    hush: () => {
      hushed = true;
    },
  };
}
