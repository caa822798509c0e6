import type { Boat } from '../boat/boat.ts';
import { about, idsOf } from '../logbook/about.ts';
import type { Entry } from '../logbook/entries.ts';
import { type Listed, newestFirst } from '../logbook/newest-first.ts';
import type { LoadedBoat } from '../outside.ts';
import { cleanLine } from '../words/clean.ts';
import { entryWords } from '../words/entry-words.ts';
import { aligned } from '../words/lines.ts';
import { counted, momentWords } from '../words/say.ts';
import { unknownWord } from '../words/unknown-word.ts';
import type { Command } from './command.ts';
import type { Options } from './options.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

const MOST_LETTERS = 400;

export const log: Command = {
  word: 'log',
  takes: '',
  says: 'the log, newest first; struck entries are marked',
  more: [
    'Each line ends with the id that `record strike entry=<id>` takes.',
    'With --at, what happened later is not listed, only counted; strikes hold whenever they were made.',
  ],
  example: 'hoveshort log --item gear-oil --since 2026-01-01',
  options: ['item', 'kind', 'since'],
  async run({ options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { loaded } = opened.value;
    const { item } = options;
    if (item !== null && !isKnown(item, loaded))
      return complainOf([unknownWord('item', item, idsOf(loaded.boat))], outside);
    const found = listed(loaded, options);
    const later = laterOf(loaded, options);
    outside.print(
      options.json
        ? jsonText({ format: 1, boat: loaded.boat.name, entries: found.map(asJson), later })
        : `${logPage(found, loaded.boat, outside.zone)}${laterWords(later)}`,
    );
    return STATUS.done;
  },
};

/** How many of what is asked for happened after `--at`. */
export function laterOf(loaded: LoadedBoat, options: Wanted): number {
  return options.at === null
    ? 0
    : listed(loaded, { ...options, at: null }).length - listed(loaded, options).length;
}

/** Said under what is listed, so that nothing is missing without a word. */
export function laterWords(later: number): string {
  if (later === 0) return '';
  return `${counted(later, 'entry', 'entries')} later than the moment asked for ${later === 1 ? 'is' : 'are'} not listed.\n`;
}

/** Entries newest first as lines: moment, who, what, id. */
export function logPage(found: readonly Listed[], boat: Boat, zone: string): string {
  if (found.length === 0) return 'no entries\n';
  const rows = found.map(({ entry, struck }) => [
    momentWords(Date.parse(entry.at), zone),
    cleanLine(entry.by ?? ''),
    `${struck ? 'STRUCK: ' : ''}${cleanLine(entryWords(entry, boat), MOST_LETTERS)}  [${cleanLine(entry.id)}]`,
  ]);
  return `${aligned(rows).join('\n')}\n`;
}

type Wanted = Pick<Options, 'at' | 'since' | 'item' | 'kind'>;

/** Entries that pass the options, newest first; what happened after `--at` is not seen. */
export function listed(loaded: LoadedBoat, { at, since, item, kind }: Wanted): readonly Listed[] {
  return newestFirst(loaded).filter(({ entry }) => {
    const happened = Date.parse(entry.at);
    return (
      (at === null || happened <= at) &&
      (since === null || happened >= since) &&
      (kind === null || entry.kind === kind) &&
      (item === null || about(entry, item))
    );
  });
}

/** An entry as a script reads it: as in the log, with whether it was struck. */
export function asJson({ entry, struck }: Listed): Entry & { struck: boolean } {
  return { ...entry, struck };
}

function isKnown(item: string, { boat, entries, struck }: LoadedBoat): boolean {
  return idsOf(boat).includes(item) || [...entries, ...struck].some((entry) => about(entry, item));
}
