import { cleaned } from '../words/cleaned.ts';
import { shoppingCsv, shoppingMarkdown } from '../words/shopping.ts';
import { type StoresDocument, storesOf } from '../words/stores-document.ts';
import { storesPage } from '../words/stores-page.ts';
import { answerFor } from './answer-for.ts';
import type { Command } from './command.ts';
import type { Options } from './options.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

export const stores: Command = {
  word: 'stores',
  takes: '',
  says: 'what is aboard and where, short first, and what to buy',
  more: [
    '--markdown and --csv print the shopping list alone.',
    'What comes and goes: record use spare=<id> count=1 for="...", record stow, record count.',
  ],
  example: 'hoveshort stores --csv > to-buy.csv',
  options: ['markdown', 'csv'],
  async run({ options }, outside) {
    const forms = (['json', 'markdown', 'csv'] as const).filter((form) => options[form]);
    if (forms.length > 1) {
      const text = forms.map((form) => `--${form}`).join(' ');
      return complainOf(
        [{ kind: 'not understood', field: 'stores', text, expected: 'one of them' }],
        outside,
      );
    }
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { loaded } = opened.value;
    const at = options.at ?? outside.now();
    const document = storesOf(loaded.boat, answerFor(loaded, { ...options, at }).document);
    outside.print(printed(document, options, outside.terminal.columns, outside.zone));
    return STATUS.done;
  },
};

function printed(document: StoresDocument, options: Options, columns: number, zone: string): string {
  if (options.json) return jsonText(document);
  if (options.csv) return shoppingCsv(document);
  return options.markdown
    ? shoppingMarkdown(cleaned(document))
    : storesPage(cleaned(document), columns, zone);
}
