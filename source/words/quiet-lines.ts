import type { LogTrouble } from '../trouble.ts';
import { cleanLine } from './clean.ts';
import { counted } from './say.ts';

const mostTold = 100;
const mostLetters = 200;

/** Lines by which nothing is missing, one a line of text under what they are; empty where there are none. */
export function quietLines(quiet: readonly LogTrouble[]): string {
  const accepted = quiet.filter(({ kind }) => kind === 'line edited');
  const never = quiet.filter(({ kind }) => kind !== 'line edited');
  return [
    ...listed('changed by hand, and taken in again since', accepted),
    ...listed(
      'never confirmed, so nothing is missing by them: the entry after each was saved without it',
      never,
    ),
  ].join('\n');
}

function listed(title: string, lines: readonly LogTrouble[]): string[] {
  if (lines.length === 0) return [];
  const more = lines.length - mostTold;
  return [
    `${counted(lines.length, 'line', 'lines')} ${title}`,
    ...lines.slice(0, mostTold).map(lineText),
    ...(more > 0 ? [`   and ${more} more`] : []),
  ];
}

function lineText(trouble: LogTrouble): string {
  const { file, line } = 'place' in trouble ? trouble.place : { file: '' };
  const text = 'text' in trouble ? trouble.text : '';
  const shown = trouble.kind === 'line damaged' && trouble.how === 'zeros' ? 'zero bytes' : text;
  return `   ${cleanLine(file, mostLetters)}, line ${line}: ${cleanLine(shown, mostLetters)}`;
}
