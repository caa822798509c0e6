import type { BoatFileTrouble, JsonFault, Place } from '../trouble.ts';
import { cleanLine } from './clean.ts';
import { quoted, sayValue } from './quoted.ts';
import type { Wording, WordsOf } from './wording.ts';

/** The words for what is written in a boat.json and cannot be used. */
export const boatFileWords: WordsOf<BoatFileTrouble> = {
  'not json': ({ what }) => jsonWords[what],
  'newer format': ({ found, known }) => ({
    title: `the format is ${found}, and this program knows ${known} at most`,
    right: 'A newer hoveshort wrote this file. It was left as it is.',
    attempt: 'the newer hoveshort',
  }),
  'field missing': ({ place, field, expected }) => ({
    title: `${place.path === undefined ? '' : `${pathOf(place)}.`}${cleanLine(field)} is missing`,
    right: `${quoted(field)} takes ${cleanLine(expected, 300)}.`,
  }),
  'wrong value': ({ place, value, expected, near }) => ({
    title: `${pathOf(place)} is ${sayValue(value)}`,
    right: `${subject(place)} takes ${cleanLine(expected, 300)}.`,
    ...(near === undefined ? {} : { attempt: asWritten(place, near) }),
  }),
  'misspelt field': ({ place, field, near }) => ({
    title: `${pathOf(place)} is not a field of the boat file`,
    right: `The nearest is "${near}". A field of your own takes a name less like it than ${quoted(field)}.`,
    attempt: `"${near}"`,
  }),
  'field twice': ({ place, field, firstLine }) => ({
    title: `${pathOf(place)} stands twice, first in line ${firstLine}`,
    right: `Only one ${quoted(field)} can count.`,
    attempt: 'take one of them out',
  }),
  'id twice': ({ id, firstLine }) => ({
    title: `the id ${quoted(id)} is used twice, first in line ${firstLine}`,
    right: 'An id is used once in a boat, so that the log knows what is meant.',
    attempt: `"id": ${quoted(`${id}-2`)}`,
  }),
  'no such item': ({ place, id, wants, near }) => ({
    title: `${pathOf(place)} names ${quoted(id)}, and the boat has no ${wants} with that id`,
    right: `It takes the id of ${article(wants)} in this file.`,
    ...(near === undefined ? {} : { attempt: asWritten(place, `"${near}"`) }),
  }),
  'out of order': outOfOrder,
  'legs do not join': ({ place, gapNm }) => ({
    title: `${pathOf(place)} is ${sayGap(gapNm)} nm from where the leg before ended`,
    right: 'Each leg begins where the one before it ended.',
    attempt: 'the "to" of the leg before',
  }),
  'more troubles': ({ file, count }) => ({
    title: `${cleanLine(file, 300)}: ${count} more ${count === 1 ? 'trouble' : 'troubles'}`,
    right: 'They are shown once those before them are put right.',
  }),
};

function outOfOrder({
  place,
  value,
  than,
  unit,
  remedy,
}: Extract<BoatFileTrouble, { kind: 'out of order' }>): Wording {
  const field = fieldOf(place);
  const how = value === than.value ? 'the same as' : 'above';
  const allowed = field === 'low' || field === 'reserve' ? 'must lie below' : 'must not lie above';
  const both = unit === '' ? '' : `, both in ${cleanLine(unit)}`;
  const swapped = `"${field}": ${than.value}, "${than.path}": ${value}`;
  return {
    title: `${pathOf(place)} is ${value}, ${how} ${than.path} (${than.value})`,
    right: `${capital(nameOf(field))} ${allowed} ${nameOf(than.path)}${both}.`,
    attempt: remedy === null ? swapped : `"${field}": ${remedy}`,
  };
}

const NAMES: { readonly [field: string]: string } = {
  low: 'the low mark',
  full: 'the full mark',
  reserve: 'the reserve',
  sd: 'the spread of a tight one (sd)',
  wide: 'the spread of a leaking one (wide)',
  atLeast: 'the least',
  atMost: 'the most',
};

function nameOf(field: string): string {
  return NAMES[field] ?? `"${field}"`;
}

const jsonWords: { readonly [what in JsonFault]: Wording } = {
  empty: {
    title: 'the file is empty',
    right: 'A boat file holds at least the format and the name of the boat.',
    attempt: '{ "format": 1, "name": "..." }',
  },
  comment: {
    title: 'a comment stands here',
    right: 'JSON has no comments; every item takes a note instead.',
    attempt: '"note": "..."',
  },
  'trailing comma': {
    title: 'a comma stands before the closing bracket',
    right: 'Nothing follows the last of a list or a group.',
    attempt: 'take the comma out',
  },
  'no comma': {
    title: 'a comma is missing before this',
    right: 'A comma stands between two fields, and between two entries of a list.',
  },
  'no colon': {
    title: 'a colon is missing before this',
    right: 'A colon stands between the name of a field and its value, as in "low": 0.9.',
  },
  'no value': { title: 'a value is missing here', right: 'Every field has a value, as in "low": 0.9.' },
  'no field name': {
    title: 'the name of a field is missing here',
    right: 'Every field begins with its name in double quotes, as in "low": 0.9.',
  },
  'other quotes': {
    title: 'these are not double quotes',
    right: 'Names and texts stand in straight double quotes.',
    attempt: '"..."',
  },
  'not closed': {
    title: 'the file ends before everything is closed',
    right: 'Each { has its }, each [ its ]. The rest of the file may have been lost.',
    attempt: 'boat.json.bak, the file as it was before the last change',
  },
  'text not closed': {
    title: 'the quotes opened here are not closed on this line',
    right: 'A text ends with double quotes on the line where it begins.',
  },
  number: {
    title: 'this is not a number as JSON writes them',
    right: 'Numbers have a digit before the point and one after it, no plus, no leading zeros, no comma.',
    attempt: '0.5',
  },
  escape: {
    title: 'a backslash stands where it means nothing',
    right: 'A backslash in a text is written twice.',
    attempt: '\\\\',
  },
  'control character': {
    title: 'a tab or another control character stands in this text',
    right: 'A text holds none.',
    attempt: '\\t for a tab, \\n for a new line',
  },
  symbol: {
    title: 'this is not a value as JSON writes them',
    right: 'Names and texts stand in double quotes; without quotes there are numbers, true, false and null.',
  },
  'after the end': {
    title: 'something follows the end',
    right: 'The file is one group in curly brackets, with nothing after it.',
  },
  'too deep': {
    title: 'brackets stand inside brackets more than 64 deep here',
    right: 'A boat file needs seven.',
  },
};

function pathOf(place: Place): string {
  return place.path === undefined ? 'the file' : cleanLine(place.path, 300);
}

function fieldOf(place: Place): string {
  return place.path?.match(/[^.]*$/)?.[0] ?? '';
}

/** The field itself, or the whole path where it is one entry of a list. */
function subject(place: Place): string {
  const field = fieldOf(place);
  return field === '' ? 'It' : field.endsWith(']') ? cleanLine(field) : quoted(field);
}

/** How the value would stand in the file: with its field's name, alone in a list. */
function asWritten(place: Place, json: string): string {
  const field = fieldOf(place);
  const value = cleanLine(json);
  return field === '' || field.endsWith(']') || field === json.slice(1, -1)
    ? value
    : `${quoted(field)}: ${value}`;
}

function article(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

function sayGap(nm: number): string {
  return nm < 10 ? String(Number(nm.toPrecision(2))) : String(Math.round(nm));
}
