import { z } from 'zod';
import { amount, group, id, type Known, list, oneOf, part, words, yesNo } from '../boat/fields.ts';

/** What is known of where a figure comes from; "judgement" where nobody has counted. */
const source = words(500).describe('Where the figures come from, or "judgement".');

/** What to mind while looking. The words for each are in words/trace-cautions.ts. */
const CAUTIONS = [
  'engine-off',
  'hot',
  'rotating',
  'pressure',
  'seacock',
  'aluminium-threads',
  'fuel',
  'no-tasting',
  'battery',
  'in-the-water',
] as const;

/** What the log can answer by itself; `log-clues.ts` says how. */
const LOG_FACTS = [
  'only-running',
  'lying-too',
  'rising',
  'no-drops',
  'over-full',
  'after-work',
  'sudden',
  'wears-fast',
  'no-wear',
  'wrong-alloy',
  'pumps-more',
] as const;

const causeSchema = group(
  {
    id: id('a cause').describe('Its id, unique in the table. A job names it by this.'),
    name: words(200).describe('What is wrong, as said aboard.'),
    prior: part('all boats with this trouble', 0, 1).describe('Its chance before anything is known.'),
    source,
    repair: words(500).describe('What puts it right.'),
    minutes: amount('minutes', 1, 10000).describe('Work to put it right, in minutes.'),
    parts: words(200).optional().describe('What that takes from the stores.'),
    atAnchor: yesNo().default(true).describe('Whether it can be done at anchor.'),
  },
  'a cause',
);

const clueSchema = group(
  {
    id: id('a clue').describe('Its id, unique in the table. An entry of the log names it by this.'),
    ask: words(500).describe('What to look for, as a question with yes or no.'),
    seen: words(200).describe('What is said once it was seen.'),
    notSeen: words(200).describe('What is said once it was looked for and not seen.'),
    log: oneOf(LOG_FACTS).optional().describe('What in the log answers it without being asked.'),
    minutes: amount('minutes', 0.5, 1000).describe('How long the look takes, in minutes.'),
    nuisance: amount('steps of nuisance', 0, 3).describe(
      '0 none; 1 a reach or dirty hands; 2 lying in the bilge; 3 a trial run or taking apart.',
    ),
    cautions: z
      .array(oneOf(CAUTIONS), { error: 'a list of cautions in square brackets' })
      .default([])
      .describe('What to mind while looking.'),
    chances: z
      .record(z.string(), part('always', 0, 1), { error: 'a chance for each cause, in curly brackets' })
      .describe('How often each cause shows it.'),
    else: part('always', 0.01, 0.99).describe('How often something not in the table shows it.'),
    source,
  },
  'a clue',
);

/** A table for `trace`. */
export const tableSchema = group(
  {
    $schema: words(2000).optional().describe('The JSON Schema an editor completes this file from.'),
    format: z.literal(1, { error: 'the number 1' }).describe('The format of this file: 1.'),
    id: id('a table').describe('Its id. One of the same id in the boat folder takes the place of ours.'),
    title: words(200).describe('The trouble it hunts.'),
    for: group(
      {
        kind: oneOf(['fluid', 'anode', 'check', 'engine']).describe('The kind of thing it is for.'),
        items: list(id('an item'), 'ids').describe('The things it is for, by id.'),
        words: list(words(60), 'words').describe('Or those with one of these words in id or name.'),
        without: list(words(60), 'words').describe('But none of these.'),
        fuel: yesNo().optional().describe('Or every fluid that burns.'),
      },
      'what the table is for',
    ),
    liquid: oneOf(['oil', 'fuel', 'coolant', 'bilge'])
      .optional()
      .describe('What runs out, if anything does.'),
    leak: part('always', 0, 0.5)
      .default(0.02)
      .describe('How often a clue is there for a reason of its own, or a look deceives.'),
    together: part('always', 0, 0.5)
      .default(0)
      .describe('How often two of the causes stand at once: then either may show a clue (noisy-OR).'),
    somethingElse: part('always', 0.01, 0.9).describe('The chance that it is nothing in this table.'),
    source,
    causes: z
      .array(causeSchema, { error: 'a list of 1 to 60 causes' })
      .min(1, { error: 'a list of 1 to 60 causes' })
      .max(60, { error: 'a list of 1 to 60 causes' }),
    clues: z
      .array(clueSchema, { error: 'a list of at most 60 clues' })
      .max(60, { error: 'a list of at most 60 clues' }),
  },
  'a table',
);

export type Table = Known<z.output<typeof tableSchema>>;
export type Cause = Table['causes'][number];
export type Clue = Table['clues'][number];
export type Caution = (typeof CAUTIONS)[number];
export type LogFact = (typeof LOG_FACTS)[number];

/** A table as a JSON Schema (draft 2020-12). */
export function tableJsonSchema(): object {
  return { title: 'a table for trace', ...z.toJSONSchema(tableSchema, { io: 'input' }) };
}
