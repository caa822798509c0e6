import type { Outside } from '../outside.ts';
import type { OptionName, Options } from './options.ts';

/** A command line once it is understood: the words after the command, and the options wherever they stood. */
export interface Request {
  readonly words: readonly string[];
  readonly options: Options;
}

/** One command. Help is made from these facts. */
export interface Command {
  readonly word: string;
  /** What follows the word, as help shows it; empty where nothing does. */
  readonly takes: string;
  /** What it does, in one line. */
  readonly says: string;
  /** Further lines of its own help. */
  readonly more: readonly string[];
  readonly example: string;
  /** The options it has beside those of all commands. */
  readonly options: readonly OptionName[];
  /** Returns the exit status. What a person can put right is complained of, not thrown. */
  run(request: Request, outside: Outside): Promise<number>;
}
