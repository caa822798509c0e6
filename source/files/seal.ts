import { codeOf } from './disk.ts';
import { ownWriter } from './own-writer.ts';
import { filesOf, refresh, type Shelf } from './shelf.ts';

const lf = Uint8Array.of(0x0a);

/**
 * Ends this laptop's own line that was cut off with an LF, so that the next entry begins a line of its own. Under the lock: what looks cut off may be
 * another process's append under way. Another laptop's file is never touched, or copies of it would no longer be prefixes of one another.
 */
export function sealOwnTail(shelf: Shelf): void {
  const writer = ownWriter(shelf);
  if (!writer || !filesOf(shelf, writer).at(-1)?.tail) return;
  try {
    shelf.keeping.lock(writer, () => {
      refresh(shelf);
      if (ownWriter(shelf) === writer) seal(shelf, writer);
    });
    refresh(shelf);
  } catch (error) {
    /** Where nothing can be written, it stays as it is and is told each time. */
    codeOf(error);
  }
}

function seal(shelf: Shelf, writer: string): void {
  const { disk } = shelf.keeping;
  const last = filesOf(shelf, writer).at(-1);
  if (!last?.tail || shelf.dead.has(last.file)) return;
  const file = disk.open(last.file, 'append');
  try {
    const { identity, bytes } = disk.openFacts(file);
    if (identity !== last.facts.identity || bytes !== last.facts.bytes) return;
    disk.write(file, lf, null);
    disk.syncData(file);
  } finally {
    disk.close(file);
  }
}
