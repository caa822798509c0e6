import path from 'node:path';
import type { LogFile } from '../logbook/chain.ts';
import type { Crc32, Frame, Line } from '../logbook/line.ts';
import { assert, type Trouble } from '../trouble.ts';
import { codeOf, type Disk, type FileFacts } from './disk.ts';
import { mostJunkLines, scan } from './scan.ts';

/** One file of the log as last read from the disk. */
export interface ReadLogFile {
  readonly file: string;
  readonly writer: string;
  readonly segment: number;
  readonly facts: FileFacts;
  /** Grows with what this process appends; all else makes a new reading. */
  readonly lines: Line[];
  /** Of its whole lines by its own writer, the one with the highest number. */
  readonly last: Frame | null;
  /** Where its whole lines end, in bytes. */
  readonly end: number;
  /** What stands after the last LF: an append under way, or one that was cut off. */
  readonly tail: Line | null;
  /** Why it was not read, where it was not. */
  readonly trouble: Trouble | null;
  /** The disk failed to sync it: nothing more is written to it. */
  readonly dead: boolean;
}

/** A file beyond this is not read: no log of one laptop gets there, segments being 8 MB. */
const mostBytes = 256 * 1024 * 1024;
const namePattern = /^([0-9a-hjkmnp-tv-z]{8})(?:-(\d{4}))?\.ndjson$/;

/** `k7m2q9xd.ndjson`, then `k7m2q9xd-0002.ndjson`: the writer and the segment a file's name tells; null for any other name. */
export function splitFileName(name: string): { readonly writer: string; readonly segment: number } | null {
  const found = namePattern.exec(name);
  if (!found) return null;
  const segment = found[2] === undefined ? 1 : Number(found[2]);
  return found[2] !== undefined && segment < 2 ? null : { writer: found[1] as string, segment };
}

export function fileName(writer: string, segment: number): string {
  return segment === 1 ? `${writer}.ndjson` : `${writer}-${String(segment).padStart(4, '0')}.ndjson`;
}

/** As it is called in troubles. */
export function shownName(file: string): string {
  return `log/${path.basename(file)}`;
}

/**
 * Reads a log file, or only what was added to it since `before` was read. What was read is synced, so that nothing is believed that a power cut could
 * still take back. Never throws for what a person can put right: that comes as its `trouble`.
 */
export function readLogFile(
  { disk, crc32 }: { readonly disk: Disk; readonly crc32: Crc32 },
  file: string,
  before: ReadLogFile | null,
): ReadLogFile {
  try {
    const facts = disk.facts(file);
    const refused = refusal(facts, file);
    if (refused) return unread(file, refused);
    if (before && wasRead(before) && sameFacts(before.facts, facts)) return before;
    const opened = disk.open(file, 'read');
    try {
      return readOpened({ disk, crc32 }, { file, opened }, before);
    } finally {
      disk.close(opened);
    }
  } catch (error) {
    return unread(file, troubleFrom(codeOf(error), file));
  }
}

function readOpened(
  { disk, crc32 }: { readonly disk: Disk; readonly crc32: Crc32 },
  { file, opened }: { readonly file: string; readonly opened: number },
  before: ReadLogFile | null,
): ReadLogFile {
  const facts = disk.openFacts(opened);
  const refused = refusal(facts, file);
  if (refused) return unread(file, refused);
  const dead = !synced(disk, opened);
  const known = before && !before.trouble && grew(before.facts, facts) ? before : null;
  const { lines, end, tail, givenUp } = scan(disk, opened, known?.end ?? 0, crc32);
  return {
    ...named(file),
    facts,
    lines: known ? [...known.lines, ...lines] : [...lines],
    last: highestFrame(lines, named(file).writer, known?.last ?? null),
    end,
    tail,
    trouble: givenUp ? { kind: 'no log', file: shownName(file), lines: mostJunkLines } : null,
    dead: dead || (known?.dead ?? false),
  };
}

/** To its end, or as far as it is worth while. */
function wasRead({ trouble }: ReadLogFile): boolean {
  return trouble === null || trouble.kind === 'no log';
}

/** Whether two looks found the file unchanged. */
function sameFacts(a: FileFacts, b: FileFacts): boolean {
  return a.identity === b.identity && a.bytes === b.bytes && a.changedMs === b.changedMs;
}

/** The file after an append that this process made itself: what was written stands after its old end, tail included. */
export function appended(
  before: ReadLogFile | null,
  {
    file,
    facts,
    lines,
  }: { readonly file: string; readonly facts: FileFacts; readonly lines: readonly Line[] },
): ReadLogFile {
  const known = before ?? unread(file, null);
  /** In place: to copy all lines at every append would take longer than the append. */
  for (const line of lines) known.lines.push(line);
  return {
    ...known,
    facts,
    last: highestFrame(lines, known.writer, known.last),
    end: facts.bytes,
    tail: null,
  };
}

/** As `logbook/` wants it: a tail that is a whole line, only its LF missing, counts; any other is told. */
export function asLogFile({ file, writer, lines, tail }: ReadLogFile): LogFile {
  return { name: shownName(file), writer, lines: tail ? [...lines, tail] : lines };
}

function named(file: string): { file: string; writer: string; segment: number } {
  const name = splitFileName(path.basename(file));
  assert(name, 'only log files are read as log files');
  return { file, ...name };
}

function unread(file: string, trouble: Trouble | null): ReadLogFile {
  const facts = { plain: false, bytes: 0, changedMs: 0, identity: '' };
  return { ...named(file), facts, lines: [], last: null, end: 0, tail: null, trouble, dead: false };
}

function highestFrame(lines: readonly Line[], writer: string, before: Frame | null): Frame | null {
  let last = before;
  for (const { frame } of lines) {
    if (frame && frame.writer === writer && frame.n >= (last?.n ?? 0)) last = frame;
  }
  return last;
}

function refusal({ plain, bytes }: FileFacts, file: string): Trouble | null {
  if (!plain) return { kind: 'not a plain file', file: shownName(file) };
  if (bytes > mostBytes) return { kind: 'file too large', file: shownName(file), bytes, most: mostBytes };
  return null;
}

/** A symlink or a pipe that took the file's place between the look and the opening. */
const notPlainCodes = new Set(['ELOOP', 'EMLINK', 'ENXIO']);

function troubleFrom(code: string, file: string): Trouble {
  if (notPlainCodes.has(code)) return { kind: 'not a plain file', file: shownName(file) };
  return { kind: 'cannot read', file: shownName(file), code };
}

function grew(before: FileFacts, now: FileFacts): boolean {
  return before.identity === now.identity && before.bytes < now.bytes;
}

/** Where syncing is refused (a disk for reading only, a system that wants a writing handle) there is nothing unsynced of ours; only a failing disk counts. */
function synced(disk: Disk, opened: number): boolean {
  try {
    disk.syncData(opened);
    return true;
  } catch (error) {
    return codeOf(error) !== 'EIO';
  }
}
