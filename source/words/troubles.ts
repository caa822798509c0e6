import stringWidth from 'string-width';
import type { Place, Trouble } from '../trouble.ts';
import { boatFileWords } from './boat-file-troubles.ts';
import { clean, cleanLine } from './clean.ts';
import { folderWords, sayCode } from './folder-troubles.ts';
import { forecastWords } from './forecast-troubles.ts';
import { logWords } from './log-troubles.ts';
import { requestWords } from './request-troubles.ts';
import { sentence } from './say.ts';
import type { Wording, WordsOf } from './wording.ts';

const INDENT = '   ';
/** Longer texts are shown in part. */
const MOST_TEXT = 2000;
const MOST_CARETS = 60;

/**
 * A trouble as a person reads it: where and what, the line with the value marked, what would be right, what to try. Several lines without a
 * line feed at the end; nothing in it can move a cursor or change a colour.
 */
export function sayTrouble(trouble: Trouble): string {
  const { title, right, attempt, text } = wordsOf(trouble);
  const place = 'place' in trouble ? trouble.place : undefined;
  return [
    `${place ? `${sayPlace(place)}: ` : ''}${title}`,
    ...(place?.excerpt && text === undefined ? markedLine(place.excerpt) : []),
    ...(text === undefined ? [] : [indented(text)]),
    ...(right === undefined ? [] : [right]),
    ...(attempt === undefined ? [] : [`Try: ${attempt}`]),
  ].join('\n');
}

/** A trouble in a sentence or two, for beside what is being typed: no file, no line, nothing to type in a shell. */
export function sayShortly(trouble: Trouble): string {
  const { title, right, attempt } = wordsOf(trouble);
  if (trouble.kind === 'in doubt' || right === undefined) return sentence(title);
  const such = trouble.kind === 'not understood' && attempt !== undefined ? `Such as: ${attempt}.` : '';
  return `${sentence(title)} ${right} ${such}`.trimEnd();
}

/** That nothing was saved, and what stood in the way, in a line. */
export function sayNotSaved(troubles: readonly Trouble[]): string {
  const ways = troubles.map((trouble) =>
    trouble.kind === 'not saved' ? sayCode(trouble.code) : sayShortly(trouble),
  );
  return `NOT SAVED: ${ways.join('; ')}`;
}

const words: WordsOf<Trouble> = {
  ...folderWords,
  ...boatFileWords,
  ...logWords,
  ...requestWords,
  ...forecastWords,
};

function wordsOf<K extends Trouble['kind']>(trouble: Extract<Trouble, { kind: K }>): Wording {
  return words[trouble.kind as K](trouble);
}

function sayPlace({ file, line }: Place): string {
  return line === undefined ? cleanLine(file, 300) : `${cleanLine(file, 300)}, line ${line}`;
}

function markedLine({ text, from, to }: NonNullable<Place['excerpt']>): readonly string[] {
  const start = text.length - text.trimStart().length;
  if (text.trim() === '') return [];
  const before = cleanLine(text.slice(start, from), MOST_TEXT);
  const marked = cleanLine(text.slice(Math.max(start, from), to), MOST_TEXT);
  const carets = Math.min(MOST_CARETS, Math.max(1, stringWidth(marked)));
  return [
    `${INDENT}${before}${marked}${cleanLine(text.slice(to).trimEnd(), MOST_TEXT)}`,
    `${INDENT}${' '.repeat(stringWidth(before))}${'^'.repeat(carets)}`,
  ];
}

function indented(text: string): string {
  return clean(text, MOST_TEXT)
    .split('\n')
    .map((line) => `${INDENT}${line}`)
    .join('\n');
}
