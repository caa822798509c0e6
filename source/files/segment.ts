import path from 'node:path';
import type { Line } from '../logbook/line.ts';
import type { Batch } from './batch.ts';
import { codeOf } from './disk.ts';
import { appended, fileName, type ReadLogFile, shownName } from './log-file.ts';
import { filesOf, putFile, type Shelf, syncNames } from './shelf.ts';

/** A new segment is begun at this size, so that a copy or a merge never has much to do again. */
const segmentBytes = 8 * 1024 * 1024;
const lf = Uint8Array.of(0x0a);

/** The file a writer's next lines go to; `known` as last read, null for one that is not there yet. */
interface Segment {
  readonly file: string;
  readonly known: ReadLogFile | null;
}

/**
 * Writes a batch at the end of a writer's last segment. Null once it is on the disk; else the code of what stood in the way. After a disk error
 * nothing more is written to that file: the same lines go to a new segment, once.
 */
export function save(shelf: Shelf, writer: string, batch: Batch): string | null {
  const target = segmentFor(shelf, writer);
  const failed = write(shelf, target, batch);
  if (!failed?.dead) return failed?.code ?? null;
  shelf.dead.add(target.file);
  const next = segmentFor(shelf, writer);
  const failedAgain = write(shelf, next, batch);
  if (!failedAgain) {
    shelf.told.push({ kind: 'disk error', file: shownName(target.file), code: failed.code });
    return null;
  }
  if (failedAgain.dead) shelf.dead.add(next.file);
  for (const one of [target, next]) takeBack(shelf, one);
  return failedAgain.code;
}

function segmentFor(shelf: Shelf, writer: string): Segment {
  const last = filesOf(shelf, writer).at(-1);
  if (last && !shelf.dead.has(last.file) && last.facts.bytes < segmentBytes) {
    return { file: last.file, known: last };
  }
  const fileOf = (segment: number) => path.join(shelf.log, fileName(writer, segment));
  let segment = (last?.segment ?? 0) + 1;
  while (shelf.dead.has(fileOf(segment))) segment += 1;
  return { file: fileOf(segment), known: null };
}

interface Failure {
  readonly code: string;
  /** Nothing more may be written to the file. */
  readonly dead: boolean;
}

function write(shelf: Shelf, { file, known }: Segment, { lines, bytes }: Batch): Failure | null {
  const { disk } = shelf.keeping;
  let opened: number;
  try {
    opened = disk.open(file, known ? 'append' : 'new append');
  } catch (error) {
    return { code: codeOf(error), dead: false };
  }
  try {
    const before = disk.openFacts(opened);
    if (!before.plain || before.identity !== (known?.facts ?? before).identity)
      return { code: 'ESTALE', dead: false };
    if (before.bytes !== (known?.facts.bytes ?? 0)) return { code: 'ESTALE', dead: false };
    const sealed = known?.tail ? Buffer.concat([lf, bytes]) : bytes;
    const failed = writeWhole(shelf, { file, opened }, sealed, before.bytes);
    if (failed) return failed;
    if (!shelf.named.has(file)) syncNames(shelf);
    shelf.named.add(file);
    const added: readonly Line[] = known?.tail ? [known.tail, ...lines] : lines;
    putFile(shelf, appended(known, { file, facts: disk.openFacts(opened), lines: added }), added);
    return null;
  } catch (error) {
    return { code: codeOf(error), dead: true };
  } finally {
    disk.close(opened);
  }
}

/** Codes that say the disk is full, not broken. */
const fullCodes = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);

function writeWhole(
  { keeping: { disk } }: Shelf,
  { file, opened }: { readonly file: string; readonly opened: number },
  bytes: Uint8Array,
  end: number,
): Failure | null {
  const code = codeOfWrite(() => disk.write(opened, bytes, null), bytes.length);
  if (code !== null) {
    const cutBack = succeeds(() => disk.cut(file, opened, end)) && succeeds(() => disk.syncData(opened));
    return { code, dead: !cutBack || !fullCodes.has(code) };
  }
  try {
    disk.syncData(opened);
    return null;
  } catch (error) {
    return { code: codeOf(error), dead: true };
  }
}

/** A write that took only part of the bytes says nothing; what would stop the rest is nearly always a full disk. */
function codeOfWrite(write: () => number, wanted: number): string | null {
  try {
    return write() === wanted ? null : 'ENOSPC';
  } catch (error) {
    return codeOf(error);
  }
}

/** What was refused must not turn up later as an entry. Best effort: the disk is failing. */
function takeBack({ keeping: { disk } }: Shelf, { file, known }: Segment): void {
  succeeds(() => {
    const opened = disk.open(file, 'append');
    try {
      disk.cut(file, opened, known?.facts.bytes ?? 0);
    } finally {
      disk.close(opened);
    }
  });
}

function succeeds(action: () => void): boolean {
  try {
    action();
    return true;
  } catch (error) {
    codeOf(error);
    return false;
  }
}
