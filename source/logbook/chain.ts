import { assert, type LogTrouble, type Place } from '../trouble.ts';
import type { Frame, Line } from './line.ts';

/** One file of one writer as it lies on the disk, every line kept, sound or not. */
export interface LogFile {
  /** As said to a person: `log/k7m2q9xd.ndjson`. */
  readonly name: string;
  readonly writer: string;
  readonly lines: readonly Line[];
}

export interface ChainTroubles {
  /** Data is or may be missing. */
  readonly said: readonly LogTrouble[];
  /** Leftovers that were never confirmed, and edited lines since accepted: for `inspect` only. */
  readonly quiet: readonly LogTrouble[];
  /** Every sound line goes on from the one before: no line is there twice. */
  readonly tidy: boolean;
}

/** The checksum that stands before the first line of a writer. */
export const chainStart = '00000000';

/**
 * Follows one writer's numbers and checksums through its files, segments in order, and tells what is damaged, missing, doubled or out of place.
 * A bad line whose sound neighbours join was never confirmed: the next append went on from the line before it.
 * `accepted` tells the edited lines that were taken in since.
 */
export function followChain(files: readonly LogFile[], accepted: (line: Line) => boolean): ChainTroubles {
  const [first] = files;
  assert(first, 'a chain is in one file at least');
  const { writer } = first;
  const said: LogTrouble[] = [];
  const quiet: LogTrouble[] = [];
  let bad: { line: Line; place: Place }[] = [];
  let last = { n: 0, crc: chainStart };
  let index: ChainIndex | null = null;

  const settle = (joined: boolean) => {
    for (const { line, place } of bad) {
      (joined || accepted(line) ? quiet : said).push(damage(line, place));
    }
    bad = [];
  };

  for (const file of files) {
    for (const [i, line] of file.lines.entries()) {
      const { frame } = line;
      if (!frame) {
        bad.push({ line, place: placeOf(file, i) });
        continue;
      }
      if (line.how === 'values') said.push(damage(line, placeOf(file, i)));
      if (frame.writer === writer && frame.n === last.n + 1 && frame.p === last.crc) {
        if (bad.length > 0) settle(true);
        last = frame;
        continue;
      }
      index ??= indexOf(files);
      const place = placeOf(file, i);
      const stray = strayed({ file, i, frame }, index, last.n);
      if (stray === 'again') continue;
      if (stray) {
        said.push({ kind: 'line out of place', place, id: idOf(frame), how: stray });
        continue;
      }
      const broken = breakBefore(frame, index, { last: last.n, bad: bad.length, place });
      if (broken) said.push(broken);
      settle(joins(frame, index) === true);
      last = frame;
    }
  }
  settle(false);
  return { said, quiet, tidy: index === null };
}

/** Where each sound line of the writer first stands, by number and then by checksum. */
type ChainIndex = ReadonlyMap<number, ReadonlyMap<string, { readonly file: LogFile; readonly i: number }>>;

function indexOf(files: readonly LogFile[]): ChainIndex {
  const index = new Map<number, Map<string, { file: LogFile; i: number }>>();
  for (const file of files) {
    for (const [i, { frame }] of file.lines.entries()) {
      if (!frame || frame.writer !== file.writer) continue;
      const same = index.get(frame.n) ?? new Map();
      if (!same.has(frame.crc)) index.set(frame.n, same.set(frame.crc, { file, i }));
    }
  }
  return index;
}

type Stray = Extract<LogTrouble, { kind: 'line out of place' }>['how'];

/** 'again': the line also stands in an earlier segment, because an append went on after a disk error. Nothing to say. */
function strayed(
  { file, i, frame }: { readonly file: LogFile; readonly i: number; readonly frame: Frame },
  index: ChainIndex,
  last: number,
): Stray | 'again' | null {
  if (frame.writer !== file.writer) return 'other writer';
  const same = index.get(frame.n);
  const first = same?.get(frame.crc);
  if (first && first.file !== file) return 'again';
  if (first && first.i !== i) return 'twice';
  if (frame.n > last || (frame.n === last && same && same.size > 1)) return null;
  return 'order';
}

/** Whether the line goes on from a line that is there; null when its number's predecessor is missing. */
function joins({ n, p }: Frame, index: ChainIndex): boolean | null {
  if (n === 1) return p === chainStart;
  return index.get(n - 1)?.has(p) ?? null;
}

function breakBefore(
  frame: Frame,
  index: ChainIndex,
  { last, bad, place }: { readonly last: number; readonly bad: number; readonly place: Place },
): LogTrouble | null {
  const { writer, n } = frame;
  const joined = joins(frame, index);
  if (joined === false) return { kind: 'chain broken', place, writer, number: n };
  if (joined === true || n - 1 - last <= bad) return null;
  return { kind: 'lines missing', place, writer, from: last + 1, to: n - 1, why: 'gap' };
}

function placeOf({ name }: LogFile, index: number): Place {
  return { file: name, line: index + 1 };
}

function idOf({ writer, n }: Frame): string {
  return `${writer}-${n}`;
}

function damage(line: Line, place: Place): LogTrouble {
  assert(line.how !== 'entry' && line.how !== 'newer', 'a sound line is no damage');
  const { how, text } = line;
  if (how === 'cut off') return { kind: 'line cut off', place, text };
  if (how === 'edited') return { kind: 'line edited', place, text };
  return { kind: 'line damaged', place, how, text };
}
