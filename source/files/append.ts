import path from 'node:path';
import { chainStart } from '../logbook/chain.ts';
import { readDraft } from '../logbook/drafts.ts';
import type { Draft, Entry } from '../logbook/entries.ts';
import { type Line, mostLineBytes, readLine, writeLine } from '../logbook/line.ts';
import { lineVersion } from '../logbook/upgrades.ts';
import { assert, bad, good, type Result, type Trouble } from '../trouble.ts';
import { codeOf, type FileFacts } from './disk.ts';
import { appended, fileName, type ReadLogFile, shownName } from './log-file.ts';
import { readMark, writeMark } from './mark.ts';
import { lastFrame, ownWriter } from './own-writer.ts';
import { filesOf, putFile, refresh, type Shelf, syncNames } from './shelf.ts';

/** A new segment is begun at this size, so that a copy or a merge never has much to do again. */
const segmentBytes = 8 * 1024 * 1024;
/** Far above any import, far below what a log file may hold. */
const mostBatchBytes = 64 * 1024 * 1024;
const lf = Uint8Array.of(0x0a);

/**
 * Saves entries at the end of this laptop's file, all or none, in one write. Ok only when they are on the disk. Drafts whose `key` is already in the log
 * are passed over, so the answer may hold fewer entries than were asked for.
 */
export function append(shelf: Shelf, drafts: readonly Draft[]): Result<readonly Entry[]> {
  const wrong = drafts.flatMap((draft) => {
    const read = readDraft(draft);
    return read.ok ? [] : read.troubles;
  });
  if (wrong.length > 0) return bad(...wrong);
  try {
    return appendUnderLock(shelf, drafts);
  } catch (error) {
    return bad(notSaved(codeOf(error), drafts));
  }
}

function notSaved(code: string, drafts: readonly Draft[]): Trouble {
  return { kind: 'not saved', code, text: drafts.map((draft) => JSON.stringify(draft)).join('\n') };
}

function appendUnderLock(shelf: Shelf, drafts: readonly Draft[]): Result<readonly Entry[]> {
  const { lock } = shelf.keeping;
  const writer = shelf.writer ?? writerFound(shelf);
  const done = writer && lock(writer, () => appendAs(shelf, writer, drafts));
  if (done) return done;
  /** One process at a time begins a new writer here, so that two of one laptop do not begin two. */
  return lock('new-writer', () => {
    const begun = writerFound(shelf) ?? unusedWriter(shelf);
    const result = lock(begun, () => appendAs(shelf, begun, drafts, 'begin'));
    assert(result, 'a writer just begun can be written to');
    return result;
  });
}

function writerFound(shelf: Shelf): string | null {
  const { disk, state } = shelf.keeping;
  disk.makeFolder(state);
  if (!isThere(shelf)) disk.makeFolder(shelf.log);
  refresh(shelf);
  return ownWriter(shelf);
}

/** Null when another process has moved this laptop's mark beyond what stands here, and the writer is no longer ours. */
function appendAs(
  shelf: Shelf,
  writer: string,
  drafts: readonly Draft[],
  begin?: 'begin',
): Result<readonly Entry[]> | null {
  refresh(shelf);
  if (begin === undefined && ownWriter(shelf) !== writer) return null;
  const batch = linesFor(shelf, writer, drafts);
  if (batch.lines.length === 0) return good([]);
  const tooLong = batch.lines.findIndex(({ length }) => length > mostLineBytes + 1);
  if (tooLong >= 0) {
    const expected = `an entry of at most ${mostLineBytes} bytes`;
    return bad({ kind: 'wrong entry', field: 'text', value: batch.lines[tooLong]?.length, expected });
  }
  const bytes = joined(batch.lines);
  if (bytes.length > mostBatchBytes) return bad(notSaved('EFBIG', drafts));
  const code = save(shelf, writer, bytes);
  if (code !== null) return bad(notSaved(code, drafts));
  keepMark(shelf, writer);
  shelf.writer = writer;
  return good(batch.entries);
}

interface Batch {
  readonly entries: readonly Entry[];
  readonly lines: readonly Uint8Array[];
}

function linesFor(shelf: Shelf, writer: string, drafts: readonly Draft[]): Batch {
  const { crc32, now } = shelf.keeping;
  const rec = new Date(now()).toISOString();
  const last = lastFrame(shelf, writer);
  const keys = new Set<string>();
  const entries: Entry[] = [];
  const lines: Uint8Array[] = [];
  let { n, crc } = last ?? { n: 0, crc: chainStart };
  for (const { kind, at, by, key, ...fields } of drafts) {
    if (key !== undefined && (shelf.keys.has(key) || keys.has(key))) continue;
    if (key !== undefined) keys.add(key);
    n += 1;
    const lc = shelf.highest + lines.length + 1;
    const frame = { v: lineVersion, id: `${writer}-${n}`, p: crc, lc };
    const line = writeLine({ ...frame, at, rec, by, kind, key, ...fields }, crc32);
    const read = readLine(line.bytes.subarray(0, -1), crc32);
    assert(read.how === 'entry' || line.bytes.length > mostLineBytes, 'what is written can be read');
    if (read.how === 'entry') entries.push(read.frame);
    lines.push(line.bytes);
    crc = line.crc;
  }
  return { entries, lines };
}

/** Null once it is on the disk; else the code of what stood in the way. After a disk error the same lines go to a new segment, once. */
function save(shelf: Shelf, writer: string, bytes: Uint8Array): string | null {
  const target = segmentFor(shelf, writer);
  const failed = write(shelf, target, bytes);
  if (!failed?.dead) return failed?.code ?? null;
  shelf.dead.add(target.file);
  const next = segmentFor(shelf, writer);
  const failedAgain = write(shelf, next, bytes);
  if (!failedAgain) {
    shelf.told.push({ kind: 'disk error', file: shownName(target.file), code: failed.code });
    return null;
  }
  if (failedAgain.dead) shelf.dead.add(next.file);
  for (const one of [target, next]) takeBack(shelf, one);
  return failedAgain.code;
}

interface Target {
  readonly file: string;
  readonly known: ReadLogFile | null;
}

function segmentFor(shelf: Shelf, writer: string): Target {
  const last = filesOf(shelf, writer).at(-1);
  if (last && !shelf.dead.has(last.file) && !last.trouble && last.facts.bytes < segmentBytes) {
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

function write(shelf: Shelf, { file, known }: Target, bytes: Uint8Array): Failure | null {
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
    const sealed = known?.tail ? joined([lf, bytes]) : bytes;
    const failed = writeWhole(shelf, { file, opened }, sealed, before.bytes);
    if (failed) return failed;
    if (!shelf.named.has(file)) syncNames(shelf);
    shelf.named.add(file);
    settle(shelf, { file, known }, bytes, disk.openFacts(opened));
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

function succeeds(action: () => void): boolean {
  try {
    action();
    return true;
  } catch (error) {
    codeOf(error);
    return false;
  }
}

function settle(shelf: Shelf, { file, known }: Target, bytes: Uint8Array, facts: FileFacts): void {
  const lines: Line[] = known?.tail ? [known.tail] : [];
  for (let start = 0; start < bytes.length; ) {
    const stop = bytes.indexOf(lf[0] as number, start);
    lines.push(readLine(bytes.subarray(start, stop), shelf.keeping.crc32));
    start = stop + 1;
  }
  putFile(shelf, appended(known, { file, facts, lines }));
}

/** What was refused must not turn up later as an entry. Best effort: the disk is failing. */
function takeBack({ keeping: { disk } }: Shelf, { file, known }: Target): void {
  succeeds(() => {
    const opened = disk.open(file, 'append');
    try {
      disk.cut(file, opened, known?.facts.bytes ?? 0);
    } finally {
      disk.close(opened);
    }
  });
}

/** The mark may lag: where it cannot be written, the entries are no less saved. */
function keepMark(shelf: Shelf, writer: string): void {
  const { disk, state, machine } = shelf.keeping;
  const last = lastFrame(shelf, writer);
  const file = filesOf(shelf, writer).at(-1);
  assert(last && file, 'what was saved stands on the shelf');
  const { n, crc } = last;
  succeeds(() => writeMark(disk, state, { writer, machine, segment: file.segment, n, crc, bytes: file.end }));
}

function unusedWriter({ keeping: { newWriter, disk, state }, files }: Shelf): string {
  for (;;) {
    const writer = newWriter();
    if (!files.some((file) => file.writer === writer) && !readMark(disk, state, writer)) return writer;
  }
}

function isThere({ keeping: { disk }, log }: Shelf): boolean {
  try {
    if (disk.isFolder(log)) return true;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
  throw Object.assign(new Error('log is no folder'), { code: 'ENOTDIR' });
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
