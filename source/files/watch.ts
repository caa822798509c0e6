import path from 'node:path';
import { codeOf, type Disk } from './disk.ts';

/** Looked at this often. Looking is a few system calls, and works on sticks and network folders where being told of changes does not. */
const everyMs = 1000;

/** Calls back when boat.json or a file of the log is not what it was at the last look; returns how to stop. Keeps no process alive. */
export function watchFolder(disk: Disk, folder: string, changed: () => void): () => void {
  let seen = look(disk, folder);
  const timer = setInterval(() => {
    const now = look(disk, folder);
    if (now === seen) return;
    seen = now;
    changed();
  }, everyMs);
  timer.unref();
  return () => clearInterval(timer);
}

function look(disk: Disk, folder: string): string {
  const log = path.join(folder, 'log');
  const files = attempt(() => disk.list(log)) ?? [];
  return [path.join(folder, 'boat.json'), ...files.map((name) => path.join(log, name))]
    .map((file) => {
      const facts = attempt(() => disk.facts(file));
      return facts ? `${file} ${facts.identity} ${facts.bytes} ${facts.changedMs}` : file;
    })
    .join('\n');
}

function attempt<T>(action: () => T): T | null {
  try {
    return action();
  } catch (error) {
    codeOf(error);
    return null;
  }
}
