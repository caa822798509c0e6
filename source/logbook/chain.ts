import { assert, type LogTrouble, type Place } from '../trouble.ts';
import type { Frame, Line } from './line.ts';

/** One file of one writer as it lies on the disk, every line kept, sound or not. */
export interface LogFile {
  /** As said to a person: `log/k7m2q9xd.ndjson`. */
  readonly name: string;
  readonly writer: string;
  readonly lines: readonly Line[];
}

/** `said`: data is or may be missing. `quiet`: leftovers that were never confirmed, and edited lines since accepted; for `inspect` only. */
export interface ChainTroubles {
  readonly said: readonly LogTrouble[];
  readonly quiet: readonly LogTrouble[];
}

/** The checksum that stands before the first line of a writer. */
export const chainStart = 0;

/**
 * Follows one writer's numbers and checksums through its files, segments in order, and tells what is damaged, missing, doubled or out of place.
 * A bad line whose sound neighbours join was never confirmed: the next append went on from the line before it.
 * `accepted` tells the edited lines that were taken in since.
 */
export function followChain(files: readonly LogFile[], accepted: (line: Line) => boolean): ChainTroubles {
  const writer = files[0]?.writer ?? '';
  const said: LogTrouble[] = [];
  const quiet: LogTrouble[] = [];
  let bad: { line: Line; place: Place }[] = [];
  let last = 0;
  let lastCrc = chainStart;
  let index: ChainIndex | null = null;

  const settle = (joined: boolean) => {
    for (const { line, place } of bad) {
      (joined || accepted(line) ? quiet : said).push(damage(line, place));
    }
    bad = [];
  };

  for (const file of files) {
    for (const [i, line] of file.lines.entries()) {
      const place = { file: file.name, line: i + 1 };
      const { frame } = line;
      if (!frame) {
        bad.push({ line, place });
        continue;
      }
      if (line.how === 'values') said.push(damage(line, place));
      if (frame.writer === writer && frame.n === last + 1 && frame.p === lastCrc) {
        if (bad.length > 0) settle(true);
      } else {
        index ??= indexOf(files);
        const stray = strayed(line, frame, index, writer, last, file);
        if (stray && stray !== 'again')
          said.push({ kind: 'line out of place', place, id: idOf(frame), how: stray });
        if (stray) continue;
        const broken = breakBefore(frame, index, last, bad.length, place);
        if (broken) said.push(broken);
        settle(joins(frame, index) === true);
      }
      last = frame.n;
      lastCrc = frame.crc;
    }
  }
  settle(false);
  return { said, quiet };
}

/** Where each sound line of the writer first stands, by number and then by checksum. */
type ChainIndex = ReadonlyMap<number, ReadonlyMap<number, { readonly file: LogFile; readonly line: Line }>>;

function indexOf(files: readonly LogFile[]): ChainIndex {
  const index = new Map<number, Map<number, { file: LogFile; line: Line }>>();
  for (const file of files) {
    for (const line of file.lines) {
      const { frame } = line;
      if (!frame || frame.writer !== file.writer) continue;
      const same = index.get(frame.n) ?? new Map();
      if (!same.has(frame.crc)) index.set(frame.n, same.set(frame.crc, { file, line }));
    }
  }
  return index;
}

type Stray = Extract<LogTrouble, { kind: 'line out of place' }>['how'];

/** 'again': the line also stands in an earlier segment, because an append went on after a disk error. Nothing to say. */
function strayed(
  line: Line,
  frame: Frame,
  index: ChainIndex,
  writer: string,
  last: number,
  file: LogFile,
): Stray | 'again' | null {
  if (frame.writer !== writer) return 'other writer';
  const same = index.get(frame.n);
  const first = same?.get(frame.crc);
  if (first && first.line !== line) return first.file === file ? 'twice' : 'again';
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
  last: number,
  bad: number,
  place: Place,
): LogTrouble | null {
  const { writer, n } = frame;
  const joined = joins(frame, index);
  if (joined === false) return { kind: 'chain broken', place, writer, number: n };
  if (joined === true || n - 1 - last <= bad) return null;
  return { kind: 'lines missing', place, writer, from: last + 1, to: n - 1, why: 'gap' };
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
