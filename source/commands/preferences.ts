import type { Outside } from '../outside.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { cleanLine } from '../words/clean.ts';
import { aligned } from '../words/lines.ts';
import { type Kept, preferenceFields, preferenceFrom } from '../words/preference-fields.ts';
import { unknownWord } from '../words/unknown-word.ts';
import type { Command, Request } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';

const MOST_LETTERS = 500;

export const preferences: Command = {
  word: 'preferences',
  takes: '[field=value ...]',
  says: 'shows what you prefer, or sets it: units, clock, zone, colours, name, second place',
  get more() {
    return [
      'A number typed without a unit is in these; files, and --json, stay in litres, metres, knots and UTC.',
      'An empty value (zone=) takes a text away. The fields:',
      ...aligned(
        preferenceFields.map(({ field, says, choices, example }) => [
          `  ${field}`,
          `${says}: ${choices?.join(', ') ?? `such as ${example}`}`,
        ]),
      ),
    ];
  },
  example: 'hoveshort preferences volume=US height=ft',
  options: [],
  async run({ words, options }: Request, outside: Outside) {
    const change = changeFrom(words);
    if (!change.ok) return complainOf(change.troubles, outside);
    const settings = await outside.settings();
    if (words.length > 0) await settings.set(change.value);
    const kept = Object.fromEntries(preferenceFields.map(({ field }) => [field, settings[field]]));
    const all = { ...kept, ...change.value };
    outside.print(options.json ? jsonText({ format: 1, ...all }) : `${lines(all).join('\n')}\n`);
    return STATUS.done;
  },
};

function changeFrom(words: readonly string[]): Result<Partial<Kept>> {
  const troubles: Trouble[] = [];
  let change: Partial<Kept> = {};
  for (const word of words) {
    const [name = '', ...value] = word.split('=');
    const field = preferenceFields.find((one) => one.field === name);
    if (!field || value.length === 0) {
      troubles.push(
        unknownWord(
          'field',
          name,
          preferenceFields.map((one) => one.field),
        ),
      );
      continue;
    }
    const read = preferenceFrom(field, value.join('='));
    if (read.ok) change = { ...change, ...read.value };
    else troubles.push(...read.troubles);
  }
  return troubles.length > 0 ? bad(...troubles) : good(change);
}

function lines(kept: { readonly [field: string]: unknown }): string[] {
  return aligned(
    preferenceFields.map(({ field, says, none = '' }) => {
      const value = kept[field];
      return [field, typeof value === 'string' ? cleanLine(value, MOST_LETTERS) : none, says];
    }),
  );
}
