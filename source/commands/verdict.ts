import type { Outside } from '../outside.ts';
import type { Verdict } from '../readiness/answer.ts';
import { verdictPage } from '../words/page.ts';
import { answerFor } from './answer-for.ts';
import type { Command } from './command.ts';
import type { Options } from './options.ts';
import { complainOf, jsonText } from './show.ts';
import { whichBoat } from './which-boat.ts';

const STATUS_OF: { readonly [V in Verdict]: number } = { go: 0, hold: 1, 'not ready': 2 };

export const verdict: Command = {
  word: 'verdict',
  takes: '',
  says: 'whether she is fit to leave, why, and what would make her so',
  more: ['Exit status: 0 go, 1 hold, 2 not ready.'],
  example: 'hoveshort verdict --json --boat ~/whimbrel',
  options: [],
  async run({ options }, outside) {
    const said = await sayVerdict(options, outside);
    return typeof said === 'number' ? said : STATUS_OF[said.verdict];
  },
};

/** Prints the verdict, in words or as JSON. Returns it, or the exit status of what stood in the way. */
export async function sayVerdict(
  options: Options,
  outside: Outside,
): Promise<number | { readonly verdict: Verdict }> {
  const opened = await whichBoat(options, outside);
  if (!opened.ok) return complainOf(opened.troubles, outside);
  const at = options.at ?? outside.now();
  const { document } = answerFor(opened.value.loaded, { ...options, at });
  outside.print(
    options.json ? jsonText(document) : verdictPage(document, outside.terminal.columns, outside.zone),
  );
  return { verdict: document.verdict };
}
