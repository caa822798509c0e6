import { render } from 'ink';
import type { Outside } from '../outside.ts';
import { type BoardWork, type Driver, driverOf } from './driver.ts';
import { fromTheTop } from './from-the-top.ts';
import type { Host } from './host.ts';
import { firstModel } from './model.ts';
import { Root } from './root.tsx';
import { suspensionOf } from './suspension.ts';

const TICK_MS = 60_000;
/** Signals that end the board, with the exit status: 128 and the signal's own number. SIGINT is Ctrl+C, a way to leave like `q`. */
const ENDING = { SIGHUP: 129, SIGINT: 0, SIGTERM: 143 } as const;

export interface BoardOptions {
  readonly outside: Pick<Outside, 'now' | 'zone' | 'settings' | 'terminal'>;
  readonly host: Host;
  readonly work: Omit<BoardWork, 'keepPalette'>;
  /** True where the clock was given: it then stands still. */
  readonly stands: boolean;
}

/**
 * Opens the board and gives the exit status once it is left: 0, or that of the signal that ended it.
 * The terminal is as it was before on every way out; a fault rejects, to be told on it.
 */
export async function openBoard({ outside, host, work, stands }: BoardOptions): Promise<number> {
  const { terminal, settings } = outside;
  const undo: (() => void)[] = [];
  let status = 0;
  let fault: { readonly thrown: unknown } | null = null;
  const instance = { unmount: () => {} };

  function end(with_: number): void {
    status = with_;
    instance.unmount();
  }
  function fail(thrown: unknown): void {
    fault ??= { thrown };
    instance.unmount();
  }

  const suspension = suspensionOf(host);
  const driver = driverOf({
    first: firstModel({
      now: outside.now(),
      zone: outside.zone,
      size: { columns: host.stdout.columns || 80, rows: host.stdout.rows || 24 },
      palette: settings.palette,
      colour: terminal.colour,
    }),
    work: { ...work, keepPalette: (palette) => settings.set({ palette }) },
    afterFrame: (run) => setImmediate(() => setImmediate(run)),
    suspend: () => void suspension.suspend().catch(fail),
    redraw: () => void suspension.redraw().catch(fail),
    quit: () => end(0),
    fault: fail,
  });

  undo.push(
    host.onFault(fail),
    ...Object.entries(ENDING).map(([signal, number]) =>
      host.onSignal(signal as keyof typeof ENDING, () => end(number)),
    ),
    host.onSignal('SIGCONT', () => void suspension.redraw().catch(fail)),
    host.onSignal('SIGTSTP', () => driver.send({ is: 'key', key: 'ctrl z' })),
    work.watch(() => driver.send({ is: 'log changed' })),
    ...(stands ? [] : [ticking(driver, outside.now)]),
  );
  // Before the first frame, so that what is typed while it is drawn is neither echoed over it nor lost.
  host.stdin.setRawMode(true);
  try {
    const { unmount, waitUntilExit } = render(
      <Root driver={driver} suspension={suspension} utf8={terminal.utf8} spoken={terminal.screenReader} />,
      {
        stdin: host.stdin,
        stdout: fromTheTop(host.stdout),
        stderr: host.stderr,
        exitOnCtrlC: false,
        patchConsole: false,
        interactive: true,
        alternateScreen: !terminal.screenReader,
        isScreenReaderEnabled: terminal.screenReader,
        incrementalRendering: true,
        maxFps: 30,
      },
    );
    instance.unmount = unmount;
    if (fault) unmount();
    await waitUntilExit();
  } finally {
    for (const one of undo) one();
    host.stdin.setRawMode(false);
  }
  if (fault) throw (fault as { thrown: unknown }).thrown;
  return status;
}

function ticking(driver: Driver, now: () => number): () => void {
  const timer = setInterval(() => driver.send({ is: 'tick', now: now() }), TICK_MS);
  return () => clearInterval(timer);
}
