import { isZone } from '../maths/wall-clock.ts';
import type { BoatFolder, LoadedBoat, Outside } from '../outside.ts';
import { clean } from '../words/clean.ts';
import { FILE_UNITS, prefer } from '../words/preferred.ts';
import { answering } from './answer-for.ts';
import { readArguments } from './arguments.ts';
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
import { whichBoat } from './which-boat.ts';

/** What the board is given. `at` null: it follows the clock. `answering` is the same road the shell takes. */
export interface BoardStart {
  readonly folder: BoatFolder;
  readonly loaded: LoadedBoat;
  readonly at: number | null;
  /** That of the preferences, else the machine's. */
  readonly zone: string;
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
  return await bare(request.options, outside, screens);
}

/** Words and typed values in the units preferred, moments in the zone preferred. With --json, as scripts ask for it, none is read: all is in file units. */
async function asPreferred(args: readonly string[], outside: Outside): Promise<Outside> {
  if (args.includes('--json')) {
    prefer(FILE_UNITS);
    return outside;
  }
  const settings = await outside.settings();
  prefer(settings);
  const { zone } = settings;
  return zone !== null && isZone(zone) ? { ...outside, zone } : outside;
}

/** No command: the board on a terminal; off it, or for a script, the verdict, whose answer is then no exit status. */
async function bare(options: Options, outside: Outside, screens: Screens): Promise<number> {
  if (!outside.terminal.interactive || options.json) {
    const said = await sayVerdict(options, outside);
    return typeof said === 'number' ? said : STATUS.done;
  }
  const opened = await whichBoat(options, outside);
  if (!opened.ok) return complainOf(opened.troubles, outside);
  const { folder, loaded } = opened.value;
  const settings = await outside.settings();
  if (!options.sample && settings.lastBoat !== folder.path) void settings.set({ lastBoat: folder.path });
  const { zone } = outside;
  const board = { folder, loaded, ...options, zone, answering, takeIn, withDecisions };
  const status = await screens.board(board);
  /** Not when a signal ended it: then there may be no time. */
  return status === STATUS.done && !options.sample ? await copyOnLeaving(folder, outside) : status;
}
