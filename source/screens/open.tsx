import { render } from 'ink';
import type { Outside } from '../outside.ts';
import { type BoardWork, type Driver, driverOf, type Screen } from './driver.ts';
import type { Host } from './host.ts';
import { firstModel } from './model.ts';
import { Root } from './root.tsx';

const TICK_MS = 60_000;
/** Ends the program at once; the number is what a shell reports for it, 128 and the signal's own. */
const ENDING = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;

export interface BoardOptions {
  readonly outside: Pick<Outside, 'now' | 'zone' | 'settings' | 'terminal'>;
  readonly host: Host;
  readonly work: Omit<BoardWork, 'keepPalette'>;
  /** True where the clock was given: it then stands still. */
  readonly stands: boolean;
}

/**
 * Opens the board and gives the exit status once it is left: 0, or 128 and a signal's number.
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
    suspend: (screen) => void suspended(screen, host).catch(fail),
    redraw: (screen) => void redrawn(screen).catch(fail),
    quit: () => end(0),
    fault: fail,
  });

  undo.push(
    host.onFault(fail),
    ...Object.entries(ENDING).map(([signal, number]) =>
      host.onSignal(signal as keyof typeof ENDING, () => end(number)),
    ),
    host.onSignal('SIGTSTP', () => driver.send({ is: 'key', key: 'ctrl z' })),
    work.watch(() => driver.send({ is: 'log changed' })),
    ...(stands ? [] : [ticking(driver, outside.now)]),
  );
  try {
    const { unmount, waitUntilExit } = render(
      <Root driver={driver} utf8={terminal.utf8} spoken={terminal.screenReader} />,
      {
        stdin: host.stdin,
        stdout: host.stdout,
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
    await waitUntilExit();
  } finally {
    for (const one of undo) one();
  }
  if (fault) throw (fault as { thrown: unknown }).thrown;
  return status;
}

function ticking(driver: Driver, now: () => number): () => void {
  const timer = setInterval(() => driver.send({ is: 'tick', now: now() }), TICK_MS);
  return () => clearInterval(timer);
}

/** Hands the terminal back, stops the job, and takes the terminal again when it goes on. */
async function suspended(screen: Screen | null, host: Host): Promise<void> {
  if (!screen) return;
  const { resume } = await screen.suspendTerminal();
  const awake = setInterval(() => {}, TICK_MS);
  await new Promise<void>((goOn) => {
    const off = host.onSignal('SIGCONT', () => {
      off();
      goOn();
    });
    host.stopJob();
  });
  clearInterval(awake);
  await resume();
}

/** Draws every cell anew, whatever another program left on the screen. */
async function redrawn(screen: Screen | null): Promise<void> {
  if (!screen) return;
  const { resume } = await screen.suspendTerminal();
  await resume();
}
