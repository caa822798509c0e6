import { briefOf } from '../words/brief.ts';
import { cleaned } from '../words/cleaned.ts';
import { wrapped } from '../words/lines.ts';
import { answerFor } from './answer-for.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

const MOST_COLUMNS = 80;

export const brief: Command = {
  word: 'brief',
  takes: '',
  says: 'the answer in half a page of sentences, to read aloud or copy into a log book',
  more: [
    'The verdict, why, what first, what to keep an eye on, and the weather. Exit status 0 whatever it is.',
  ],
  example: 'hoveshort brief --boat ~/whimbrel',
  options: [],
  async run({ options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { document } = answerFor(opened.value.loaded, { ...options, at: options.at ?? outside.now() });
    const paragraphs = briefOf(cleaned(document, ['trouble']), outside.zone);
    if (options.json) {
      const { boat, at, verdict } = document;
      outside.print(jsonText({ format: 1, boat, at, verdict, brief: paragraphs }));
      return STATUS.done;
    }
    const columns = Math.min(outside.terminal.columns, MOST_COLUMNS);
    const page = paragraphs.map((paragraph) => wrapped(paragraph, columns).join('\n'));
    outside.print(`${page.join('\n\n')}\n`);
    return STATUS.done;
  },
};
