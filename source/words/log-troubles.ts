import type { LogTrouble } from '../trouble.ts';
import { cleanLine } from './clean.ts';
import { quoted } from './quoted.ts';
import type { Wording, WordsOf } from './wording.ts';

const LEFT_OUT = 'It is kept and shown, and left out of every sum.';
const INSPECT = 'hoveshort inspect';
const NEWER = 'the newer hoveshort';

/** The words for lines of the log that cannot be used, or that are missing. */
export const logWords: WordsOf<LogTrouble> = {
  'line cut off': ({ text }) => ({
    title: 'the last line was cut off, probably by power loss; it had not been confirmed',
    ...(text === '' ? {} : { text }),
    right: 'Nothing before it was lost.',
    attempt: 'record it again if it did happen',
  }),
  'line damaged': ({ how, text }) => ({
    title: damage[how],
    ...(text === '' || how === 'zeros' ? {} : { text }),
    right: 'The line stays in the file and is left out of every sum: what it said is missing here.',
    attempt: INSPECT,
  }),
  'line edited': ({ text }) => ({
    title: 'the line was changed by hand: it no longer fits its checksum',
    text,
    right: 'It is left out of every sum until it is accepted as a new entry.',
    attempt: 'hoveshort inspect --accept',
  }),
  'lines missing': ({ writer, from, to, why }) => ({
    title: `${missingBecause[why]}${numbers(from, to)} of ${cleanLine(writer)} ${isAre(from, to)} missing${why === 'gap' ? '' : ' here'}`,
    right: 'What they said is not in this answer. Another laptop or a backup may still have them.',
    attempt: 'hoveshort merge <folder of the other copy>',
  }),
  'chain broken': ({ writer, number }) => ({
    title: `entry ${number} of ${cleanLine(writer)} does not follow from the one before it`,
    right: 'A line before it was changed, or lines were moved. Both are kept.',
    attempt: INSPECT,
  }),
  'line out of place': ({ id, how }) => ({
    title: `the line of entry ${cleanLine(id)} ${misplaced[how]}`,
    right: 'It is read all the same, once. Nothing is missing by it.',
    attempt: INSPECT,
  }),
  'same id twice': ({ id }) => ({
    title: `two lines that differ have the id ${quoted(id)}`,
    right: 'Both are kept and counted. To strike one, name it by its id and checksum.',
    attempt: INSPECT,
  }),
  'count leap': ({ lc }) => ({
    title: `the entry count leaps to ${lc}`,
    right: 'The entry is kept, and the count goes on from where it was.',
    attempt: INSPECT,
  }),
  'more damage': ({ count }) => ({
    title: `the log has ${count} more damaged ${count === 1 ? 'line' : 'lines'}`,
    right: 'Only the first are listed. What they said is missing in this answer.',
    attempt: INSPECT,
  }),
  'newer entries': ({ count }) => ({
    title: `${count === 1 ? '1 entry' : `${count} entries`} from a newer version ${count === 1 ? 'is' : 'are'} not in this answer`,
    right: 'They are kept as they are.',
    attempt: NEWER,
  }),
  'unknown item': ({ entry, at, item, near }) => ({
    title: `entry ${cleanLine(entry)} of ${day(at)} names ${quoted(item)}, and the boat has no such item`,
    right: LEFT_OUT,
    attempt:
      near === undefined
        ? `add ${quoted(item)} to boat.json, or: hoveshort record strike entry=${cleanLine(entry)}`
        : `hoveshort record strike entry=${cleanLine(entry)}, and record it again for ${quoted(near)}`,
  }),
  'odd reading': oddReading,
  'new size unknown': ({ entry, at, item, field }) => ({
    title: `entry ${cleanLine(entry)} of ${day(at)} gives ${quoted(item)} ${sizes[field]}, and its size when new is not known`,
    right: `How much of it is left cannot be reckoned without ${quoted(field)} in boat.json.`,
    attempt: `"${field}": its ${sizes[field].replace(/^an? /, '')} when new`,
  }),
  clock: ({ entry, at, rec, why }) => ({
    title: `the clock ${why} at entry ${cleanLine(entry)}: recorded ${moment(rec)} for ${moment(at)}`,
    right: 'The order of the entries holds all the same. Times near it may be wrong.',
    attempt: 'set the clock of the laptop',
  }),
};

const missingBecause = {
  gap: '',
  'older copy': 'an older copy was put back: ',
  'file gone': 'this laptop wrote this file, and it is gone: ',
} as const;

const damage: { readonly [how in Extract<LogTrouble, { kind: 'line damaged' }>['how']]: string } = {
  checksum: 'the line does not fit its checksum',
  'not json': 'this is not a line of the log',
  zeros: 'the line is a run of zero bytes',
  'too long': 'the line is longer than the 16 KiB an entry may have',
  values: 'the line holds a value no entry can have',
};

const misplaced: { readonly [how in Extract<LogTrouble, { kind: 'line out of place' }>['how']]: string } = {
  twice: 'stands here a second time',
  order: 'stands out of its order',
  'other writer': 'belongs in the file of another laptop',
};

const sizes = {
  massKg: 'a mass in kilograms',
  diameterMm: 'a diameter in millimetres',
  lengthMm: 'a length in millimetres',
} as const;

function oddReading({
  entry,
  at,
  item,
  value,
  unit,
  than,
  why,
}: Extract<LogTrouble, { kind: 'odd reading' }>): Wording {
  const reads = `${quoted(item)} reads ${amount(value, unit)} on ${day(at)}`;
  const strike = `hoveshort record strike entry=${cleanLine(entry)}, and record it again`;
  switch (why) {
    case 'meter back':
      return {
        title: `${reads}, below the ${amount(than, unit)} before it`,
        right: 'A meter only goes on, unless it was swapped for a new one.',
        attempt: `${strike} (swapped=yes for a new meter)`,
      };
    case 'meter leapt':
      return {
        title: `${reads}, after ${amount(than, unit)}`,
        right: 'The engine cannot have run that long in the time between.',
        attempt: strike,
      };
    case 'more than new':
      return {
        title: `${reads}, and new it had ${amount(than, unit)}`,
        right: 'A worn anode is smaller than a new one.',
        attempt: `${strike}, or put the size it had when new right in boat.json`,
      };
    case 'outside tank':
      return {
        title: `${reads}, and ${value > than ? 'it holds' : 'it cannot hold less than'} ${amount(than, unit)}`,
        right: 'The level lies outside what there is room for.',
        attempt: strike,
      };
    case 'count below zero':
      return {
        title: `${quoted(item)} comes to ${amount(value, unit)} on ${day(at)}`,
        right: 'More was used than was put aboard: a stowing was not recorded, or a use was recorded twice.',
        attempt: 'count what is there: hoveshort record count spare=<id> count=<number>',
      };
    case 'in the future':
      return {
        title: `${reads}, and that is still to come`,
        right: 'It is kept, and not seen until then.',
        attempt: strike,
      };
  }
}

function amount(value: number, unit: string): string {
  const shown = String(Number(value.toPrecision(6)));
  return unit === '' || unit === 'each' ? shown : `${shown} ${cleanLine(unit)}`;
}

function numbers(from: number, to: number): string {
  return from === to ? `entry ${from}` : `entries ${from} to ${to}`;
}

function isAre(from: number, to: number): string {
  return from === to ? 'is' : 'are';
}

function day(at: string): string {
  return cleanLine(at.slice(0, 10));
}

/** To the minute, in UTC: where clocks are in doubt, zones only add to it. */
function moment(at: string): string {
  return cleanLine(`${at.slice(0, 10)} ${at.slice(11, 16)} UTC`);
}
