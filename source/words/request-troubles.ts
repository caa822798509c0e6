import type { RequestTrouble } from '../trouble.ts';
import { cleanLine } from './clean.ts';
import { sayCode } from './folder-troubles.ts';
import { logWords } from './log-troubles.ts';
import { quoted, sayValue } from './quoted.ts';
import type { WordsOf } from './wording.ts';

/** The words for requests that cannot be carried out: arguments, typed values, entries. */
export const requestWords: WordsOf<RequestTrouble> = {
  'unknown word': ({ word, what, near }) => ({
    title: `there is no ${what} ${quoted(word)}`,
    attempt: near === undefined ? 'hoveshort --help' : cleanLine(near),
  }),
  'no table': ({ item, others }) => ({
    title: `no table to trace ${quoted(item)} by`,
    right:
      'A table of your own goes into the boat folder, in tracing/; hoveshort schema tracing describes it.',
    ...(others.length === 0
      ? {}
      : { attempt: cleanLine(`hoveshort trace ${others[0]} (or ${others.slice(1).join(', ')})`, 300) }),
  }),
  wanting: ({ what, example }) => ({
    title: `${cleanLine(what, 300)} is wanting`,
    attempt: cleanLine(example, 300),
  }),
  'not understood': ({ field, text, expected, example }) => ({
    title: `${cleanLine(field)}: ${quoted(text)} is not understood`,
    right: `${quoted(field)} takes ${cleanLine(expected, 300)}.`,
    ...(example === undefined ? {} : { attempt: cleanLine(example, 300) }),
  }),
  'wrong entry': ({ line, field, value, expected, near }) => ({
    title: `${line === undefined ? '' : `line ${line}: `}${cleanLine(field)} is ${sayValue(value)}`,
    right: `${quoted(field)} takes ${cleanLine(expected, 300)}.`,
    ...(near === undefined ? {} : { attempt: cleanLine(near) }),
  }),
  'in doubt': ({ line, doubt }) => ({
    title: `${line === undefined ? '' : `line ${line}: `}${doubtTitle(doubt)}`,
    right: 'Nothing was saved.',
    attempt: 'look again; if it is so, the same with --yes',
  }),
  'not saved': ({ code, text }) => ({
    title: `NOT SAVED: ${sayCode(code)}`,
    text,
    right: 'Nothing of it is in the log. Write it on paper until it can be saved.',
  }),
  'changed meanwhile': ({ id, field }) => ({
    title:
      field === null
        ? `${quoted(id)} is no longer in boat.json: somebody else has changed the file meanwhile`
        : `${quoted(field)} of ${quoted(id)} is not what it was: somebody else has changed boat.json meanwhile`,
    right: 'Nothing was written; what you typed still stands here.',
    attempt:
      field === null
        ? 'Esc, and a to add it anew'
        : 'Enter once more, to write yours over it; or Esc, and look at what stands there now',
  }),
  'still named': ({ name, by }) => ({
    title: `${quoted(name)} stays: ${namedBy(by)}`,
    right: 'The boat file would name something that is not there.',
    attempt: `take it out of ${quoted(by[0]?.field ?? '')} of ${quoted(by[0]?.name ?? '')} first, then x again`,
  }),
};

const MOST_NAMED = 3;

function namedBy(by: Extract<RequestTrouble, { kind: 'still named' }>['by']): string {
  const some = by.slice(0, MOST_NAMED).map(({ name, field }, at) => {
    return `${quoted(name)} ${at === 0 ? 'names it ' : ''}in ${quoted(field)}`;
  });
  const more = by.length - some.length;
  return [...some, ...(more > 0 ? [`and ${more} more`] : [])].join(', ');
}

function doubtTitle(doubt: Extract<RequestTrouble, { kind: 'in doubt' }>['doubt']): string {
  switch (doubt.kind) {
    case 'odd reading':
      return logWords['odd reading'](doubt).title;
    case 'unknown item':
      return logWords['unknown item'](doubt).title;
    case 'clock':
      return logWords.clock(doubt).title;
  }
}
