import type { EntryKind } from '../logbook/entries.ts';

/** Every option, for help and for reading the command line. `takes` is what stands after it; null where it stands alone. */
export const OPTIONS = {
  boat: { takes: '<folder>', says: 'the boat folder: boat.json and log/' },
  sample: { takes: null, says: 'a fresh copy of the sample boat, its last entry this morning' },
  json: { takes: null, says: 'one JSON document instead of words' },
  at: {
    takes: '<instant>',
    says: 'as it was then, without what happened later: 2026-02-03T07:40Z, "yesterday 18:00"',
  },
  seed: { takes: '<number>', says: 'another seed for the simulated passages (1)' },
  simulations: { takes: '<number>', says: 'passages simulated: 256 to 65536, in steps of 32 (4096)' },
  item: { takes: '<id>', says: 'only what names this item' },
  kind: { takes: '<kind>', says: 'only this kind of entry' },
  since: { takes: '<instant>', says: 'only what happened since' },
  issued: { takes: '<instant>', says: 'when the forecast was issued, where it does not say' },
  zone: { takes: '<zone,...>', says: 'the waters meant, of a forecast for several' },
  yes: {
    takes: null,
    says: 'save it although it looks odd; take a forecast in without asking; merge another name; new: ask the name only',
  },
  markdown: { takes: null, says: 'the shopping list as Markdown' },
  csv: { takes: null, says: 'the shopping list as CSV' },
  accept: { takes: null, says: 'take lines changed by hand in as new entries' },
  help: { takes: null, says: 'this help, or that of a command' },
  version: { takes: null, says: 'the version' },
} as const;

export type OptionName = keyof typeof OPTIONS;

/** The options every command takes. */
export const COMMON: readonly OptionName[] = [
  'boat',
  'sample',
  'json',
  'at',
  'seed',
  'simulations',
  'help',
  'version',
];

export const SEED = 1;
export const SIMULATIONS = { usual: 4096, least: 256, most: 65_536, step: 32 };

/** Options as understood. Instants are ms since 1970 UTC. */
export interface Options {
  readonly boat: string | null;
  readonly sample: boolean;
  readonly json: boolean;
  /** Null: the clock. */
  readonly at: number | null;
  readonly seed: number;
  readonly simulations: number;
  readonly item: string | null;
  readonly kind: EntryKind | null;
  readonly since: number | null;
  readonly issued: number | null;
  readonly zone: string | null;
  readonly yes: boolean;
  readonly markdown: boolean;
  readonly csv: boolean;
  readonly accept: boolean;
  readonly help: boolean;
  readonly version: boolean;
}
