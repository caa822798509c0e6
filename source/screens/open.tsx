import { type Instance, render } from 'ink';
import { isZone } from '../maths/wall-clock.ts';
import type { Outside, Settings } from '../outside.ts';
import type { Trouble } from '../trouble.ts';
import type { Kept } from '../words/preference-fields.ts';
import { prefer } from '../words/preferred.ts';
import { type BoardWork, type Driver, driverOf } from './driver.ts';
import { fromTheTop } from './from-the-top.ts';
import type { Host } from './host.ts';
import { firstModel, type Model, modelWithoutBoat } from './model.ts';
import { pasteApart } from './paste-apart.ts';
import { quietOf } from './quiet.ts';
import { Root } from './root.tsx';
import { suspensionOf } from './suspension.ts';

const TICK_MS = 60_000;
/** How long the last bytes may take to reach the terminal: it may be gone. */
const CLOSING_MS = 500;
const ERASED_FROM_THE_TOP = '\u001b[H\u001b[2J';
/** Signals that end the board, with the exit status: 128 and the signal's own number. SIGINT is Ctrl+C, a way to leave like `q`. */
const ENDING = { SIGHUP: 129, SIGINT: 0, SIGTERM: 143 } as const;

export interface BoardOptions {
  readonly outside: Pick<Outside, 'now' | 'zone' | 'settings' | 'terminal'>;
  /** The boat folder, from the root; null while there is none. */
  readonly boat: string | null;
  readonly host: Host;
  readonly work: Omit<BoardWork, 'keepPalette' | 'keepPreferences'>;
  /** Where there is no boat yet: why, as far as it is to be told. Null where one is to be opened. */
  readonly none: readonly Trouble[] | null;
  /** Runs the person's editor on boat.json in the terminal. */
  readonly edit: () => Promise<void>;
  /** The zone where none is preferred. */
  readonly machineZone: string;
  /** True where the clock was given: it then stands still. */
  readonly stands: boolean;
}

type Outcome = { readonly status: number } | { readonly thrown: unknown };

/**
 * Opens the board and gives the exit status once it is left: 0, or that of the signal that ended it.
 * The terminal is as it was before on every way out; a fault rejects, to be told on it.
 */
export async function openBoard({
  outside,
  boat,
  host,
  work,
  none,
  machineZone,
  edit,
  stands,
}: BoardOptions): Promise<number> {
  const { terminal } = outside;
  const settings = await outside.settings();
  const ending = Promise.withResolvers<Outcome>();
  const end = (status: number) => ending.resolve({ status });
  const fail = (thrown: unknown) => (isGone(thrown) ? end(ENDING.SIGHUP) : ending.resolve({ thrown }));
  const suspension = suspensionOf(host);
  const quiet = quietOf(host);
  const begun = Promise.withResolvers<Instance>();
  const drawn = async () => (await begun.promise).waitUntilRenderFlush();
  const driver = driverOf({
    first: (none ? modelWithoutBoat(none) : firstModel)({
      now: outside.now(),
      zone: outside.zone,
      by: settings.name,
      kept: keptIn(settings),
      machineZone,
      size: { columns: host.stdout.columns || 80, rows: host.stdout.rows || 24 },
      palette: settings.palette,
      colour: terminal.colour,
      arrows: terminal.utf8,
      copy: lastCopy(settings, boat),
    }),
    work: {
      ...work,
      keepPalette: (palette) => void settings.set({ palette }),
      keepPreferences: (change) => {
        void settings.set(change);
        prefer(settings, () => keptIn(settings).zone ?? machineZone);
      },
    },
    afterFrame: (run) => void drawn().then(run).catch(fail),
    suspend: () => void suspension.suspend().catch(fail),
    edit: () =>
      void suspension
        .lend(edit)
        .then(() => driver.send({ is: 'log changed' }))
        .catch(fail),
    redraw: () =>
      void begun.promise.then((instance) => drawAfresh(instance, host, terminal.screenReader)).catch(fail),
    quit: () => end(0),
    fault: fail,
  });
  const undo = [
    host.onFault(fail),
    host.onGone(() => end(ENDING.SIGHUP)),
    ...Object.entries(ENDING).map(([signal, status]) =>
      host.onSignal(signal as keyof typeof ENDING, () => end(status)),
    ),
    host.onSignal('SIGCONT', () => void suspension.redraw().catch(fail)),
    host.onSignal('SIGTSTP', () => driver.send({ is: 'key', key: 'ctrl z' })),
    work.watch(() => driver.send({ is: 'log changed' })),
    ...(stands ? [] : [ticking(driver, outside.now)]),
  ];
  // What was read already is taken in, so that the first frame is a whole one.
  await new Promise((next) => setImmediate(next));
  // Before the first frame, so that what is typed while it is drawn is neither echoed over it nor lost.
  host.stdin.setRawMode(true);
  const instance = render(
    <Root
      driver={driver}
      suspension={suspension}
      utf8={terminal.utf8}
      spoken={terminal.screenReader}
      now={outside.now}
      rowsKept={host.rowsKept}
    />,
    {
      stdin: pasteApart(quiet.stdin),
      stdout: fromTheTop(quiet.stdout),
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
  begun.resolve(instance);
  instance.waitUntilExit().then(() => end(0), fail);
  const outcome = await ending.promise;
  if (suspension.isHandedBack()) quiet.hush();
  await closed(instance, quiet);
  for (const one of undo) one();
  if ('thrown' in outcome) throw outcome.thrown;
  return outcome.status;
}

function keptIn({ volume, height, wind, clock, zone, palette, name, backup }: Settings): Kept {
  // The file may be written by hand.
  const known = zone !== null && isZone(zone) ? zone : null;
  return { volume, height, wind, clock, zone: known, palette, name, backup };
}

function lastCopy({ backup, checkedCopies }: Settings, folder: string | null): Model['copy'] {
  if (backup === null) return null;
  const made = checkedCopies.find(({ boat, place }) => boat === folder && place === backup);
  return { at: made ? Date.parse(made.at) : null };
}

/**
 * Draws every cell anew, whatever another program left on the screen. The terminal is kept the while: handed back and taken again, as
 * after a stop, it would lose what is typed.
 */
function drawAfresh(instance: Instance, { stdout }: Host, spoken: boolean): void {
  instance.clear();
  if (!spoken) stdout.write(ERASED_FROM_THE_TOP);
  // Ink draws only what has changed, and always at a new size.
  stdout.emit('resize');
}

/** Gives the terminal back, and does not wait for one that is gone. */
async function closed(instance: Instance, { stdin }: Pick<Host, 'stdin'>): Promise<void> {
  try {
    instance.unmount();
    const late = new Promise((settle) => setTimeout(settle, CLOSING_MS).unref());
    await Promise.race([instance.waitUntilExit().catch(() => {}), late]);
    stdin.setRawMode(false);
  } catch {
    // The terminal is gone: a window closed, a line dropped. Nothing is lost by it, every entry is saved when made.
  }
}

/** Whether it says no more than that nobody is at the other end. */
function isGone(thrown: unknown): boolean {
  return thrown instanceof Error && 'code' in thrown && (thrown.code === 'EIO' || thrown.code === 'EPIPE');
}

function ticking(driver: Driver, now: () => number): () => void {
  const timer = setInterval(() => driver.send({ is: 'tick', now: now() }), TICK_MS);
  return () => clearInterval(timer);
}
