import { createRequire } from 'node:module';
import path from 'node:path';
import type { StatementSync } from 'node:sqlite';

/** Runs `work` while no other process holds the lock of that name. Throws an error with a code where it cannot be had. */
export type Lock = <T>(name: string, work: () => T) => T;

/** Another process holds the lock for the time of one append; ten seconds are only reached when something is stuck. */
const mostWaitMs = 10_000;

/**
 * Locks held by the kernel for as long as a process lives: no process number, no clock, nothing stale after a power cut. They are the locks of a
 * database file that never holds anything. Nothing else may open these files: closing another descriptor on one drops the lock.
 */
export function locksIn(folder: string, waitMs = mostWaitMs): Lock {
  const open = new Map<string, Held>();
  return (name, work) => {
    const file = path.join(folder, `${name}.lock`);
    const { begin, end } = open.get(name) ?? openLock(file, waitMs);
    open.set(name, { begin, end });
    unlessBusy(file, () => begin.run());
    try {
      return work();
    } finally {
      end.run();
    }
  };
}

/** A statement keeps its database open. Prepared, the two take three quarters of the time. */
interface Held {
  readonly begin: StatementSync;
  readonly end: StatementSync;
}

/** Nothing is ever written, so the journal that would guard it is left out: looking for one took most of the time. */
function openLock(file: string, waitMs: number): Held {
  const held = new (sqlite().DatabaseSync)(file);
  held.exec(`PRAGMA busy_timeout = ${waitMs}`);
  unlessBusy(file, () => held.exec('PRAGMA journal_mode = MEMORY'));
  return { begin: held.prepare('BEGIN EXCLUSIVE'), end: held.prepare('ROLLBACK') };
}

function unlessBusy(file: string, action: () => void): void {
  try {
    action();
  } catch (error) {
    const { errcode } = error as { readonly errcode?: unknown };
    throw errcode === sqliteBusy
      ? Object.assign(new Error(`${file} is held`, { cause: error }), { code: 'EBUSY' })
      : error;
  }
}

/** SQLITE_BUSY, from the list of result codes of the database's manual. */
const sqliteBusy = 5;

let loaded: typeof import('node:sqlite') | null = null;

/** Loaded at the first use, since most runs save nothing. Some versions of Node warn that the module is new, which is nothing the skipper can act on. */
function sqlite(): typeof import('node:sqlite') {
  if (loaded) return loaded;
  const warn = process.emitWarning;
  process.emitWarning = () => {};
  try {
    loaded = createRequire(import.meta.url)('node:sqlite') as typeof import('node:sqlite');
  } finally {
    process.emitWarning = warn;
  }
  return loaded;
}
