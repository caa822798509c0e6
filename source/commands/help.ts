import { aligned } from '../words/lines.ts';
import type { Command } from './command.ts';
import { COMMON, OPTIONS, type OptionName } from './options.ts';

/** What `--help` prints: every command with its example, every option; made from the tables, so it cannot go stale. */
export function help(commands: readonly Command[]): string {
  const rows = commands.map(({ word, takes, says }) => [`  ${word} ${takes}`.trimEnd(), says]);
  const examples = commands.map(({ example }) => `  ${example}`);
  return text([
    'hoveshort: is she fit to leave? From a boat folder and its log to a verdict with its reasons.',
    '',
    'hoveshort [command] [options]',
    '',
    ...aligned([['  (no command)', 'the board; off a terminal the verdict in words'], ...rows]),
    '',
    'Options, anywhere on the line',
    ...optionLines(COMMON),
    '',
    'Examples',
    ...examples,
    '',
    'hoveshort <command> --help says more of one.',
  ]);
}

/** The help of one command. */
export function commandHelp(command: Command): string {
  return text([
    `hoveshort ${command.word} ${command.takes}`.trimEnd(),
    '',
    `  ${command.says}`,
    ...command.more.map((line) => `  ${line}`),
    '',
    'Options',
    ...optionLines([...command.options, ...COMMON]),
    '',
    'Example',
    `  ${command.example}`,
  ]);
}

function optionLines(names: readonly OptionName[]): string[] {
  return aligned(
    names.map((name) => {
      const { takes, says } = OPTIONS[name];
      return [`  --${name}${takes === null ? '' : ` ${takes}`}`, says];
    }),
  );
}

function text(lines: readonly string[]): string {
  return `${lines.join('\n')}\n`;
}
