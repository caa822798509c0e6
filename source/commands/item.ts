import { cautionsFor } from '../words/cautions.ts';
import { cleaned } from '../words/cleaned.ts';
import { itemLines } from '../words/item-page.ts';
import { wrapped } from '../words/lines.ts';
import { unknownWord } from '../words/unknown-word.ts';
import { answerFor } from './answer-for.ts';
import type { Command } from './command.ts';
import { asJson, logPage, newestFirst } from './log.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

export const item: Command = {
  word: 'item',
  takes: '<id>',
  says: 'all that is known of one item: its state, figures and entries',
  more: ['Ids are those of boat.json.'],
  example: 'hoveshort item gear-oil',
  options: [],
  async run({ words, options }, outside) {
    const [id] = words;
    if (id === undefined)
      return complainOf([{ kind: 'wanting', what: 'the id of an item', example: item.example }], outside);
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { loaded } = opened.value;
    const at = options.at ?? outside.now();
    const { document } = answerFor(loaded, { ...options, at });
    const found = document.items.find((one) => one.id === id);
    if (!found) {
      const ids = document.items.map((one) => one.id);
      return complainOf([unknownWord('item', id, ids)], outside);
    }
    const listed = newestFirst(loaded, { at, since: null, kind: null, item: id });
    if (options.json) {
      outside.print(jsonText({ ...found, entries: listed.map(asJson) }));
      return STATUS.done;
    }
    const { columns } = outside.terminal;
    const said = [...itemLines(cleaned(found), at, outside.zone), ...cautionsFor(found.kind)];
    const lines = said.flatMap((line) => wrapped(line, columns, 0, 2));
    outside.print(`${lines.join('\n')}\n\n${logPage(listed, loaded.boat, outside.zone)}`);
    return STATUS.done;
  },
};
