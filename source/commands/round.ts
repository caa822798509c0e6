import { cleaned } from '../words/cleaned.ts';
import { roundOf } from '../words/round-document.ts';
import { roundPage } from '../words/round-page.ts';
import { answerFor } from './answer-for.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

export const round: Command = {
  word: 'round',
  takes: '',
  says: 'the morning round as a page to print and write on',
  more: [
    'What is due a look in three passes: engine stopped, running, before leaving; in the order of boat.json.',
  ],
  example: 'hoveshort round | lpr',
  options: [],
  async run({ options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { loaded } = opened.value;
    const { condition, document } = answerFor(loaded, { ...options, at: options.at ?? outside.now() });
    const page = roundOf(loaded.boat, condition, document);
    const { columns } = outside.terminal;
    outside.print(options.json ? jsonText(page) : roundPage(cleaned(page), columns, outside.zone));
    return STATUS.done;
  },
};
