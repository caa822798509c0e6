import { readDraft } from '../logbook/drafts.ts';
import type { Draft, Entry } from '../logbook/entries.ts';
import { assert, bad, good, type Result, type Trouble } from '../trouble.ts';
import { batchOf } from './batch.ts';
import { codeOf } from './disk.ts';
import { readMark, writeMark } from './mark.ts';
import { isOwn, lastFrame, ownWriter, writersMarked } from './own-writer.ts';
import { save } from './segment.ts';
import { filesOf, refresh, type Shelf } from './shelf.ts';

/** Far above any import, far below what a log file may hold. */
const mostBatchBytes = 64 * 1024 * 1024;

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
    refresh(shelf);
    /** Looked at without its lock, another process's append under way makes a writer look as if it were no longer ours. */
    for (const known of writersMarked(shelf)) {
      const saved = lock(known, () => appendAs(shelf, known, drafts));
      if (saved) return saved;
    }
    const begun = unusedWriter(shelf);
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
  if (begin === undefined && !isOwn(shelf, writer)) return null;
  const batch = batchOf(shelf, writer, drafts);
  if (!batch.ok) return batch;
  const { entries, bytes } = batch.value;
  if (entries.length === 0) return good([]);
  if (bytes.length > mostBatchBytes) return bad(notSaved('EFBIG', drafts));
  const code = save(shelf, writer, batch.value);
  if (code !== null) return bad(notSaved(code, drafts));
  keepMark(shelf, writer);
  shelf.writer = writer;
  return good(entries);
}

/** The mark may lag: where it cannot be written, the entries are no less saved. */
function keepMark(shelf: Shelf, writer: string): void {
  const { disk, state, machine } = shelf.keeping;
  const last = lastFrame(shelf, writer);
  const file = filesOf(shelf, writer).at(-1);
  assert(last && file, 'what was saved stands on the shelf');
  const { n, crc } = last;
  try {
    const mark = { writer, machine, segment: file.segment, n, crc, bytes: file.end, place: shelf.place };
    writeMark(disk, state, mark);
  } catch (error) {
    codeOf(error);
  }
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
