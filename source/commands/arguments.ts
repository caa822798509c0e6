import { parseArgs } from 'node:util';
import { type EntryKind, entryKinds } from '../logbook/entries.ts';
import type { Outside } from '../outside.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { instantFrom, momentFrom } from '../words/moments.ts';
import { unknownWord } from '../words/unknown-word.ts';
import type { Command, Request } from './command.ts';
import { COMMON, OPTIONS, type OptionName, type Options, SEED, SIMULATIONS } from './options.ts';

/** The time and the zone, asked only where something is typed that goes by them: a zone takes long to find out. */
type Clock = Pick<Outside, 'now' | 'zone'>;

/** Values as typed, by option; `true` for one that stands alone. */
type Given = ReadonlyMap<OptionName, string | true>;

/** A command line, understood: which command (null: none named), its words and options wherever they stood. Every trouble at once. */
export function readArguments(
  args: readonly string[],
  commands: readonly Command[],
  clock: Clock,
): Result<{ command: Command | null; request: Request }> {
  const { words, given, troubles } = tokensOf(args);
  const [word, ...rest] = words;
  const command = commands.find((one) => one.word === word) ?? null;
  if (word !== undefined && !command) {
    const names = commands.map((one) => one.word);
    troubles.push(unknownWord('command', word, names));
  }
  const options = optionsOf(given, clock, troubles);
  if (command || word === undefined) troubles.push(...foreign(command, given));
  return troubles.length > 0 ? bad(...troubles) : good({ command, request: { words: rest, options } });
}

function tokensOf(args: readonly string[]) {
  const words: string[] = [];
  const given = new Map<OptionName, string | true>();
  const troubles: Trouble[] = [];
  const types = Object.fromEntries(
    Object.entries(OPTIONS).map(([name, { takes }]) => [
      name,
      { type: takes === null ? ('boolean' as const) : ('string' as const) },
    ]),
  );
  const parsed = parseArgs({ args: [...args], options: types, strict: false, tokens: true });
  for (const token of parsed.tokens ?? []) {
    if (token.kind === 'positional') words.push(token.value);
    if (token.kind !== 'option') continue;
    const trouble = optionTrouble(token);
    if (trouble) troubles.push(trouble);
    else given.set(token.name as OptionName, token.value ?? true);
  }
  return { words, given, troubles };
}

function optionTrouble(token: { name: string; rawName: string; value?: string | undefined }): Trouble | null {
  if (!Object.hasOwn(OPTIONS, token.name))
    return unknownWord(
      'option',
      token.rawName,
      Object.keys(OPTIONS).map((name) => `--${name}`),
    );
  const { takes } = OPTIONS[token.name as OptionName];
  if (takes !== null && token.value === undefined)
    return { kind: 'wanting', what: `${takes} after ${token.rawName}`, example: `${token.rawName} ${takes}` };
  if (takes === null && token.value !== undefined)
    return { kind: 'not understood', field: token.rawName, text: token.value, expected: 'nothing after it' };
  return null;
}

function foreign(command: Command | null, given: Given): Trouble[] {
  const own = new Set([...COMMON, ...(command?.options ?? [])]);
  return [...given.keys()]
    .filter((name) => !own.has(name))
    .map((name) => ({ kind: 'unknown word', word: `--${name}`, what: 'option' }));
}

function optionsOf(given: Given, clock: Clock, troubles: Trouble[]): Options {
  const text = (name: OptionName) => {
    const value = given.get(name);
    return typeof value === 'string' ? value : null;
  };
  const moment = (name: OptionName, now: number): number | null => {
    const typed = text(name);
    if (typed === null) return null;
    const found = instantFrom(typed) ?? momentFrom(typed, now, clock.zone);
    if (found === null) troubles.push(notUnderstood(name, typed, 'an instant', '2026-02-03T07:40Z'));
    return found;
  };
  const at = moment('at', clock.now());
  const now = at ?? clock.now();
  return {
    boat: text('boat'),
    sample: given.has('sample'),
    json: given.has('json'),
    at,
    seed: wholeNumber(text('seed'), SEED, { least: 0, most: 2 ** 32 - 1, step: 1 }, 'seed', troubles),
    simulations: wholeNumber(text('simulations'), SIMULATIONS.usual, SIMULATIONS, 'simulations', troubles),
    item: text('item'),
    kind: kindOf(text('kind'), troubles),
    since: moment('since', now),
    issued: moment('issued', now),
    zone: text('zone'),
    yes: given.has('yes'),
    markdown: given.has('markdown'),
    csv: given.has('csv'),
    accept: given.has('accept'),
    help: given.has('help'),
    version: given.has('version'),
  };
}

function wholeNumber(
  typed: string | null,
  usual: number,
  range: { least: number; most: number; step: number },
  name: OptionName,
  troubles: Trouble[],
): number {
  if (typed === null) return usual;
  const value = Number(typed);
  const { least, most, step } = range;
  if (/^\d+$/.test(typed) && value >= least && value <= most && value % step === 0) return value;
  const steps = step === 1 ? '' : `, a multiple of ${step}`;
  troubles.push(notUnderstood(name, typed, `a whole number from ${least} to ${most}${steps}`, String(usual)));
  return usual;
}

function kindOf(typed: string | null, troubles: Trouble[]): EntryKind | null {
  if (typed === null || Object.hasOwn(entryKinds, typed)) return typed as EntryKind | null;
  troubles.push(unknownWord('entry kind', typed, Object.keys(entryKinds)));
  return null;
}

function notUnderstood(name: OptionName, text: string, expected: string, example: string): Trouble {
  return { kind: 'not understood', field: `--${name}`, text, expected, example: `--${name} ${example}` };
}
