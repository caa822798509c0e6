import { type Boat, enginesOf } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import { inOneGo } from '../maths/turns.ts';
import type { Table } from '../tracing/table.ts';
import type { Trouble } from '../trouble.ts';
import { cautionsFor } from '../words/cautions.ts';
import { cleaned } from '../words/cleaned.ts';
import { engineItem, engineLines } from '../words/engine-item.ts';
import type { FoundDocument } from '../words/found-document.ts';
import { foundLines } from '../words/found-parts.ts';
import { itemLines } from '../words/item-page.ts';
import { wrapped } from '../words/lines.ts';
import { tablesOf, tracing } from '../words/traced.ts';
import { sayTrouble } from '../words/troubles.ts';
import { unknownWord } from '../words/unknown-word.ts';
import { answerFor } from './answer-for.ts';
import type { Command } from './command.ts';
import { asJson, laterOf, laterWords, listed, logPage } from './log.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

export const item: Command = {
  word: 'item',
  takes: '<id>',
  says: 'all that is known of one item: its state, figures and entries',
  more: ['Ids are those of boat.json: items, and engines.'],
  example: 'hoveshort item gear-oil',
  options: [],
  async run({ words, options }, outside) {
    const [id] = words;
    if (id === undefined)
      return complainOf([{ kind: 'wanting', what: 'the id of an item', example: item.example }], outside);
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { folder, loaded } = opened.value;
    const at = options.at ?? outside.now();
    const { condition, document } = answerFor(loaded, { ...options, at });
    const found = document.items.find((one) => one.id === id) ?? engineItem(document, loaded.boat, id);
    if (!found) {
      const ids = [...document.items, ...document.engines].map((one) => one.id);
      return complainOf([unknownWord('item', id, ids)], outside);
    }
    const own = await folder.tables();
    const from = { boat: loaded.boat, entries: loaded.entries, condition, own };
    const { found: before } = inOneGo(tracing(from, { id, table: null, flooding: null, found: null }));
    const doubts = doubtsAbout(id, loaded.boat, condition).map((doubt) => sayTrouble(doubt));
    const wanted = { at: options.at, since: null, kind: null, item: id };
    const [entries, later] = [listed(loaded, wanted), laterOf(loaded, wanted)];
    if (options.json) {
      outside.print(
        jsonText({ ...found, found: before, trouble: doubts, entries: entries.map(asJson), later }),
      );
      return STATUS.done;
    }
    const { columns } = outside.terminal;
    const shown = cleaned(found);
    const said = [
      ...(shown.kind === 'engine'
        ? engineLines(shown, cleaned(document), { at, zone: outside.zone })
        : itemLines(shown, at, outside.zone)),
      ...doubtLines(id, doubts),
      ...cautionsFor(found.kind === 'engine' ? 'service' : found.kind),
      ...tracedLines(id, tablesOf(from, id)),
      ...foundSaid(id, cleaned(before)),
    ];
    const lines = said.flatMap((line) => wrapped(line, columns, 0, 2));
    outside.print(
      `${lines.join('\n')}\n\n${logPage(entries, loaded.boat, outside.zone)}${laterWords(later)}`,
    );
    return STATUS.done;
  },
};

/** Of many readings left out the newest are told. */
const MOST_DOUBTS = 3;

function doubtLines(id: string, doubts: readonly string[]): string[] {
  const more = doubts.length - MOST_DOUBTS;
  return [
    ...doubts.slice(-MOST_DOUBTS).flatMap((doubt) => doubt.split('\n')),
    ...(more > 0 ? [`and ${more} more readings left out; hoveshort item ${id} --json has them all`] : []),
  ];
}

/** How to trace it: by a table of its own where there are several. */
function tracedLines(id: string, tables: readonly Table[]): string[] {
  const ways = tables.length === 1 ? [id] : tables.map((table) => `${id} ${table.id}`);
  return ways.length === 0 ? [] : [`Where it comes from: hoveshort trace ${ways.join(', or trace ')}`];
}

/** The hunts that work has closed, newest first, and how to read one in full. */
function foundSaid(id: string, found: readonly FoundDocument[]): string[] {
  if (found.length === 0) return [];
  return [
    ...foundLines(found).map((text) => `Found before, ${text}`),
    `The whole of it: hoveshort trace ${id} found=newest${found.length > 1 ? ', or found=<day of the work>' : ''}`,
  ];
}

/** What the log says of the item, or of the engines it goes by, that was left out of the sums; oldest first. */
function doubtsAbout(id: string, boat: Boat, { troubles }: Condition): readonly Trouble[] {
  const fluid = boat.fluids.find((one) => one.id === id);
  const engine = boat.services.find((one) => one.id === id)?.engine;
  const ids = new Set([id, ...(fluid ? enginesOf(fluid) : []), ...(engine === undefined ? [] : [engine])]);
  return troubles
    .filter((trouble) => 'item' in trouble && 'at' in trouble)
    .filter(({ item }) => ids.has(item))
    .toSorted((a, b) => a.at.localeCompare(b.at));
}
