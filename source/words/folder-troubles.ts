import type { FolderTrouble } from '../trouble.ts';
import { cleanLine } from './clean.ts';
import { quoted } from './quoted.ts';
import type { WordsOf } from './wording.ts';

/** The words for folders and files that cannot be had as they should be. */
export const folderWords: WordsOf<FolderTrouble> = {
  'no boat folder': ({ folder, near }) => ({
    title: `there is no boat in ${path(folder)}`,
    right: 'A boat is a folder with a boat.json in it.',
    attempt:
      near === undefined
        ? `hoveshort new ${folder === '.' ? '<folder>' : path(folder)} to begin one, --boat <folder>, or --sample for a look at the sample boat`
        : `--boat ${path(near)}`,
  }),
  'folder not empty': ({ folder }) => ({
    title: `${path(folder)} is not empty`,
    right: 'A new boat takes a folder of its own, so that nothing is written over. Nothing was changed.',
    attempt: `hoveshort new ${path(folder)}-2`,
  }),
  'cannot make': ({ folder, code }) => ({
    title: `${path(folder)} cannot be made: ${sayCode(code)}`,
    right: 'Nothing was written.',
    attempt: codeOf(code)?.[1] ?? 'another folder',
  }),
  'another boat': ({ folder, name, ours }) => ({
    title:
      name === null
        ? `the boat file in ${path(folder)} gives no name that can be read`
        : `the boat in ${path(folder)} is ${quoted(name)}, not ${quoted(ours)}`,
    right: 'Merging puts the logs of one boat together. Nothing was changed.',
    attempt: 'the same with --yes, if it is this boat under another name',
  }),
  'cannot read': ({ file, code }) => ({
    title: `${path(file)} cannot be read: ${sayCode(code)}`,
    ...remedyFor(code),
  }),
  'cannot write': ({ file, code }) => ({
    title: `${path(file)} cannot be written: ${sayCode(code)}`,
    ...remedyFor(code),
  }),
  'read only': ({ folder, code }) => ({
    title: `${path(folder)} can be looked at, and nothing can be saved in it: ${sayCode(code)}`,
    ...remedyFor(code),
  }),
  'file too large': ({ file, bytes, most }) => ({
    title: `${path(file)} is ${sayBytes(bytes)}, more than the ${sayBytes(most)} that is read of such a file`,
    right: 'It was left as it is. So large a file is most likely another one by the same name.',
  }),
  'not a plain file': ({ file }) => ({
    title: `${path(file)} is not a plain file`,
    right: 'Links, folders and devices are not followed, so that nothing outside the boat folder is touched.',
    attempt: 'put the file itself in its place',
  }),
  'no log': ({ file, lines }) => ({
    title: `${path(file)} has more than ${lines} lines that are none of a log; what follows them was not read`,
    right: 'It was left as it is. Most likely another file has got in its place.',
    attempt: 'hoveshort merge <folder of another copy>, once the file is moved out of the log folder',
  }),
  'stray file': ({ file }) => ({
    title: `${path(file)} is not read: its name is not that of a log file`,
    right: 'It may be a copy made by hand or by a program that keeps folders alike. Nothing in it counts.',
    attempt: 'hoveshort merge <folder it came from>, then move the file out of the log folder',
  }),
  'forecast damaged': ({ file, what }) => ({
    title: `${path(file)} is not a forecast that can be read: ${cleanLine(what)}`,
    right: 'It was left as it is and does not count.',
    attempt: 'hoveshort forecast <file> with the forecast as it came',
  }),
  'no place for a copy': ({ folder, why }) => ({
    title: `no copy can be made in ${path(folder)}: ${noPlace[why]}`,
    right:
      'A copy goes into a folder that is there already, under the name of the boat folder. Nothing was written.',
    attempt: 'another place for it in the preferences, best on another disk',
  }),
  'not copied': ({ to, code }) => ({
    title: `the copy in ${path(to)} was not made${code === null ? ' whole' : `: ${sayCode(code)}`}`,
    right: 'What it had before it still has, and the boat folder is as it was.',
    ...(code === 'ENOENT' ? { attempt: 'put the stick in, and leave the board again' } : {}),
  }),
  'copy unsound': ({ folder, lacks }) => ({
    title:
      lacks === 0
        ? `the copy in ${path(folder)} was read again, and something in it is damaged`
        : `the copy in ${path(folder)} was read again, and ${lacks} of the entries are not in it`,
    right: 'The boat folder is as it was. The copy is not to be relied on.',
    attempt: `hoveshort inspect --boat ${path(folder)}, and a copy on another disk`,
  }),
  'little room': ({ folder, bytes }) => ({
    title: `${path(folder)} has ${sayBytes(bytes)} of room left on its disk`,
    right: 'Entries can still be saved, but not for long.',
    attempt: 'free some room on the disk',
  }),
  'disk error': ({ file, code }) => ({
    title: `${path(file)} could not be written to the end: ${sayCode(code)}`,
    right: 'The entry is safe in a new file. The one that failed is left as it is.',
    attempt: 'copy the boat folder to another disk soon',
  }),
};

const noPlace = {
  'not from the root': 'it is not given from the root of the disk',
  'the boat folder itself': 'it is the boat folder itself, or the copy would be',
  taken: 'what stands there under the name of the boat folder is something else',
} as const;

function path(text: string): string {
  return cleanLine(text, 300);
}

const CODES: { readonly [code: string]: readonly [what: string, remedy?: string] } = {
  ENOENT: ['it is not there', 'look whether the name is spelt as on the disk'],
  ENOTDIR: ['a part of its path is a file, not a folder'],
  EISDIR: ['it is a folder'],
  EACCES: ['its permissions do not allow it', 'give yourself the right to read and write it'],
  EPERM: ['its permissions do not allow it', 'give yourself the right to read and write it'],
  EROFS: ['the disk is set to read only', 'another disk, or the switch on the card'],
  ENOSPC: ['the disk is full', 'free some room on the disk'],
  EDQUOT: ['your share of the disk is full', 'free some room on the disk'],
  EIO: ['the disk reports an error', 'copy the boat folder to another disk while it can be read'],
  ELOOP: ['it is a link', 'put the file itself in its place'],
  EEXIST: ['it is there already'],
  EBUSY: ['another program holds it', 'close the other program'],
  EMFILE: ['too many files are open', 'close other programs'],
  ENAMETOOLONG: ['its name is too long for this disk'],
};

/** What the system's error code means, in plain words; an unknown one is shown as it is. */
export function sayCode(code: string): string {
  const known = codeOf(code);
  return known ? `${known[0]} (${code})` : `the system says ${cleanLine(code)}`;
}

function remedyFor(code: string): { readonly attempt: string } {
  return { attempt: codeOf(code)?.[1] ?? 'look at it with another program' };
}

function codeOf(code: string): readonly [what: string, remedy?: string] | undefined {
  return Object.hasOwn(CODES, code) ? CODES[code] : undefined;
}

function sayBytes(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  if (bytes < 1_000_000) return `${Number((bytes / 1000).toPrecision(3))} kB`;
  return `${Number((bytes / 1_000_000).toPrecision(3))} MB`;
}
