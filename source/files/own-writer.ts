import type { Frame, Line } from '../logbook/line.ts';
import { assert, type Trouble } from '../trouble.ts';
import { fileName, shownName } from './log-file.ts';
import { hasMark, type Mark, marksOf, readMark } from './mark.ts';
import { filesOf, type Shelf } from './shelf.ts';

/**
 * The writer id under which this laptop goes on in this folder; null when it needs a new one. An id is used only while the line of its mark stands here:
 * in a copy of the folder, on a swapped stick, or where an older copy was put back it does not, or soon will not. Nor is it used while one of its files
 * cannot be read: the mark may lag, and a number in that file would be used twice.
 */
export function ownWriter(shelf: Shelf): string | null {
  return writersOn(shelf).find((writer) => isOwn(shelf, writer)) ?? null;
}

/** The writers here of which this laptop has a mark, whatever it says. */
export function writersMarked(shelf: Shelf): readonly string[] {
  const { disk, state } = shelf.keeping;
  return writersOn(shelf).filter((writer) => hasMark(disk, state, writer));
}

/** Whether this laptop goes on here under that writer id. */
export function isOwn(shelf: Shelf, writer: string): boolean {
  const mark = ownMark(shelf, writer);
  return mark !== null && hasLine(shelf, mark) && writersRead(shelf).includes(writer);
}

/** Where this laptop has written more under a writer id than stands here: the numbers that are missing. */
export function olderCopyTroubles(shelf: Shelf): readonly Trouble[] {
  return writersRead(shelf).flatMap((writer): Trouble[] => {
    const mark = ownMark(shelf, writer);
    const last = lastFrame(shelf, writer)?.n ?? 0;
    if (!mark || mark.n <= last || mark.n - last <= editedAfter(shelf, writer, last)) return [];
    const file = filesOf(shelf, writer).at(-1);
    assert(file, 'a writer that was read has a file');
    const place = { file: shownName(file.file) };
    return [{ kind: 'lines missing', place, writer, from: last + 1, to: mark.n, why: 'older copy' }];
  });
}

/** Writers under which this laptop wrote here, and of which no file is left: all their numbers are missing. */
export function goneTroubles({ keeping, files, troubles, place }: Shelf): readonly Trouble[] {
  const { disk, state, machine } = keeping;
  /** A folder that cannot be listed tells of no file. */
  if (troubles.some(({ kind }) => kind === 'cannot read' || kind === 'not a plain file')) return [];
  return marksOf(disk, state, place)
    .filter((mark) => mark.machine === machine && !files.some(({ writer }) => writer === mark.writer))
    .map(({ writer, n }) => {
      const file = shownName(fileName(writer, 1));
      return { kind: 'lines missing', place: { file }, writer, from: 1, to: n, why: 'file gone' };
    });
}

/** Lines changed by hand stand in the place of those that were saved last: they are told as what they are. */
function editedAfter(shelf: Shelf, writer: string, last: number): number {
  const lines = filesOf(shelf, writer).flatMap((file) => file.lines);
  const from = lines.findLastIndex(({ frame }) => frame !== null && frame.n === last) + 1;
  return lines.slice(from).filter(({ how }) => how === 'edited').length;
}

/** The line of a writer with the highest number: its next line goes on from there. */
export function lastFrame(shelf: Shelf, writer: string): Frame | null {
  let last: Frame | null = null;
  for (const file of filesOf(shelf, writer)) {
    for (const frame of [file.last, file.tail?.frame]) {
      if (frame?.writer === writer && frame.n >= (last?.n ?? 0)) last = frame;
    }
  }
  return last;
}

function ownMark({ keeping: { disk, state, machine } }: Shelf, writer: string): Mark | null {
  const mark = readMark(disk, state, writer);
  return mark && mark.machine === machine ? mark : null;
}

function writersOn(shelf: Shelf): readonly string[] {
  return [...new Set(shelf.files.map(({ writer }) => writer))];
}

/** Of a file that cannot be read, that is told; which numbers it holds is not known. */
function writersRead(shelf: Shelf): readonly string[] {
  const unread = new Set(shelf.files.flatMap(({ writer, trouble }) => (trouble ? [writer] : [])));
  return writersOn(shelf).filter((writer) => !unread.has(writer));
}

function hasLine(shelf: Shelf, { writer, n, crc }: Mark): boolean {
  return filesOf(shelf, writer).some(({ lines, tail }) => {
    const is = (line: Line) => line.frame?.n === n && line.frame.crc === crc && line.frame.writer === writer;
    return lines.findLast(is) !== undefined || (tail !== null && is(tail));
  });
}
