import { isZone } from '../maths/wall-clock.ts';
import type { Outside } from '../outside.ts';
import type { Result, Trouble } from '../trouble.ts';
import { clean } from '../words/clean.ts';
import type { NewBoat } from '../words/new-boat.ts';
import { FILE_UNITS, prefer } from '../words/preferred.ts';
import { answering } from './answer-for.ts';
import { readArguments } from './arguments.ts';
import { beginBoat } from './begin-boat.ts';
import { copyOnLeaving } from './copy-on-leaving.ts';
import { withDecisions } from './decided.ts';
import { commandHelp, help } from './help.ts';
import type { Options } from './options.ts';
import { complainOf } from './show.ts';
import { STATUS } from './status.ts';
import { COMMANDS } from './table.ts';
import { takeIn } from './take-in.ts';
import { sayVerdict } from './verdict.ts';
import { VERSION } from './version.ts';
import { type OpenBoat, openFolder, whichBoat } from './which-boat.ts';

/** What the board is given. `at` null: it follows the clock. `answering` is the same road the shell takes. */
export interface BoardStart {
  /** Null where no boat is known: the board then begins one. */
  readonly boat: OpenBoat | null;
  /** Why there is none. */
  readonly told: readonly Trouble[];
  /** Makes the folder of a new boat and opens it. */
  begin(boat: NewBoat, folder: string): Promise<Result<OpenBoat>>;
  /** Opens a fresh copy of the sample boat. */
  sample(): Promise<Result<OpenBoat>>;
  readonly at: number | null;
  /** That of the preferences, else the machine's. */
  readonly zone: string;
  readonly machineZone: string;
  readonly seed: number;
  readonly simulations: number;
  readonly answering: typeof answering;
  readonly takeIn: typeof takeIn;
  /** What is saved with entries typed: leaving is a decision. */
  readonly withDecisions: typeof withDecisions;
}

export interface Screens {
  /** Holds the terminal until the board is left; returns the exit status. */
  board(start: BoardStart): Promise<number>;
}

/** Carries out a command line and returns the exit status. Never throws: what the program does not expect is said on standard error and returns 70. */
export async function run(args: readonly string[], outside: Outside, screens: Screens): Promise<number> {
  try {
    return await carryOut(args, outside, screens);
  } catch (fault) {
    const what = fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
    outside.complain(
      `a fault in hoveshort itself, not in your files; what was said to be saved is saved\n${clean(what, 4000)}\n`,
    );
    return STATUS.fault;
  }
}

async function carryOut(args: readonly string[], world: Outside, screens: Screens): Promise<number> {
  const outside = await asPreferred(args, world);
  const read = readArguments(args, COMMANDS, outside);
  if (!read.ok) return complainOf(read.troubles, outside);
  const { command, request } = read.value;
  if (request.options.version) {
    outside.print(`hoveshort ${VERSION}\n`);
    return STATUS.done;
  }
  if (request.options.help) {
    outside.print(command ? commandHelp(command) : help(COMMANDS));
    return STATUS.done;
  }
  if (command) return await command.run(request, outside);
  return await bare(request.options, outside, { screens, machineZone: () => world.zone });
}

/** Words and typed values in the units preferred, moments in the zone preferred. With --json, as scripts ask for it, none is read: all is in file units. */
async function asPreferred(args: readonly string[], outside: Outside): Promise<Outside> {
  if (args.includes('--json')) {
    prefer(FILE_UNITS);
    return outside;
  }
  const settings = await outside.settings();
  const { zone } = settings;
  const own = zone !== null && isZone(zone) ? { ...outside, zone } : outside;
  prefer(settings, () => own.zone);
  return own;
}

/** No command: the board on a terminal; off it, or for a script, the verdict, whose answer is then no exit status. */
async function bare(
  options: Options,
  outside: Outside,
  { screens, machineZone }: { readonly screens: Screens; readonly machineZone: () => string },
): Promise<number> {
  if (!outside.terminal.interactive || options.json) {
    const said = await sayVerdict(options, outside);
    return typeof said === 'number' ? said : STATUS.done;
  }
  const opened = await whichBoat(options, outside);
  if (!opened.ok && !isFirstRun(options, opened.troubles)) return complainOf(opened.troubles, outside);
  const settings = await outside.settings();
  if (opened.ok && !options.sample && settings.lastBoat !== opened.value.folder.path)
    void settings.set({ lastBoat: opened.value.folder.path });
  let kept = opened.ok && !options.sample ? opened.value.folder : null;
  const status = await screens.board({
    boat: opened.ok ? opened.value : null,
    told: opened.ok || settings.lastBoat === null ? [] : opened.troubles,
    begin: async (boat, folder) => {
      const place = await outside.newBoat(folder);
      if (!place.ok) return place;
      const begun = await beginBoat(boat, { place: place.value, now: options.at ?? outside.now() }, outside);
      if (!begun.ok) return begun;
      const made = await openFolder(place.value.path, outside);
      if (made.ok) kept = made.value.folder;
      return made;
    },
    sample: () => whichBoat({ ...options, sample: true }, outside),
    at: options.at,
    seed: options.seed,
    simulations: options.simulations,
    zone: outside.zone,
    machineZone: machineZone(),
    answering,
    takeIn,
    withDecisions,
  });
  /** Not when a signal ended it: then there may be no time. */
  return status === STATUS.done && kept ? await copyOnLeaving(kept, outside) : status;
}

/** No boat was named, none is here, and the last one, if there was one, is gone. */
function isFirstRun({ boat, sample }: Options, troubles: readonly Trouble[]): boolean {
  return boat === null && !sample && troubles.every(({ kind }) => kind === 'no boat folder');
}
