import fs from 'node:fs';
import path from 'node:path';

/** How a file is opened. `new` fails where it exists. None follows a symlink in the last place or waits on a pipe. */
export type Opening = 'read' | 'append' | 'new append' | 'new' | 'change' | 'create or change';

export interface FileFacts {
  readonly plain: boolean;
  readonly bytes: number;
  readonly changedMs: number;
  /** Device and inode: tells whether two names are one file. */
  readonly identity: string;
}

/**
 * All the program asks of a disk, in the words of the system calls, so that a disk that fails or loses power can be handed in.
 * Every method throws an error with a `code` such as ENOSPC. Bytes are on the disk only after a sync, names only after `syncFolder`.
 */
export interface Disk {
  list(folder: string): string[];
  isFolder(path: string): boolean;
  makeFolder(folder: string): void;
  /** Where a path leads to from the root, links followed. */
  real(path: string): string;
  facts(path: string): FileFacts;
  mayWrite(path: string): void;
  roomBytes(folder: string): number;
  open(path: string, opening: Opening): number;
  openFacts(file: number): FileFacts;
  read(file: number, into: Uint8Array, position: number): number;
  /** One write call; returns how many bytes it took. Position null: at the end. */
  write(file: number, bytes: Uint8Array, position: number | null): number;
  /** Shortens a file open for appending. */
  cut(path: string, file: number, bytes: number): void;
  /** The bytes, and what is needed to find them again. */
  syncData(file: number): void;
  /** Everything about the file. */
  sync(file: number): void;
  syncFolder(folder: string): void;
  close(file: number): void;
  rename(from: string, to: string): void;
  remove(path: string): void;
  /** Only where nothing is in it. */
  removeFolder(folder: string): void;
}

const { O_RDONLY, O_RDWR, O_WRONLY, O_APPEND, O_CREAT, O_EXCL } = fs.constants;
/** Windows has neither; there the check of `openFacts` is all there is. */
const careful = (fs.constants.O_NOFOLLOW ?? 0) | (fs.constants.O_NONBLOCK ?? 0);
const windows = fs.constants.O_NOFOLLOW === undefined;

const flags: { readonly [O in Opening]: number } = {
  read: O_RDONLY,
  append: O_WRONLY | O_APPEND,
  'new append': O_WRONLY | O_APPEND | O_CREAT | O_EXCL,
  new: O_WRONLY | O_CREAT | O_EXCL,
  change: O_RDWR,
  'create or change': O_WRONLY | O_CREAT,
};

/** Some file systems have no sync of a folder. */
const unable = new Set(['EINVAL', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS']);

/** The disk of this computer. */
export const realDisk: Disk = {
  list: (folder) => fs.readdirSync(folder),
  isFolder: (path) => fs.lstatSync(path).isDirectory(),
  makeFolder,
  real: (path) => fs.realpathSync.native(path),
  facts: (path) => factsOf(fs.lstatSync(path)),
  mayWrite: (path) => fs.accessSync(path, fs.constants.W_OK),
  roomBytes: (folder) => {
    const { bavail, bsize } = fs.statfsSync(folder);
    return bavail * bsize;
  },
  open: (path, opening) => fs.openSync(path, flags[opening] | careful, 0o600),
  openFacts: (file) => factsOf(fs.fstatSync(file)),
  read: (file, into, position) => fs.readSync(file, into, 0, into.length, position),
  write: (file, bytes, position) => fs.writeSync(file, bytes, 0, bytes.length, position),
  cut: (path, file, bytes) => {
    if (!windows) return fs.ftruncateSync(file, bytes);
    /** A handle that only appends cannot shorten a file there. */
    const second = fs.openSync(path, 'r+');
    try {
      fs.ftruncateSync(second, bytes);
    } finally {
      fs.closeSync(second);
    }
  },
  syncData: (file) => fs.fdatasyncSync(file),
  sync: (file) => fs.fsyncSync(file),
  syncFolder: (folder) => {
    if (windows) return;
    const file = fs.openSync(folder, O_RDONLY);
    try {
      fs.fsyncSync(file);
    } catch (error) {
      if (!unable.has(codeOf(error))) throw error;
    } finally {
      fs.closeSync(file);
    }
  },
  close: (file) => fs.closeSync(file),
  rename: (from, to) => fs.renameSync(from, to),
  remove: (path) => fs.unlinkSync(path),
  removeFolder: (folder) => fs.rmdirSync(folder),
};

/** With those it stands in. Node's own way never ends where a folder is there and nothing can be made in it, as in /proc. */
function makeFolder(folder: string): void {
  try {
    fs.mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') {
      if (isDirectory(folder)) return;
      throw error;
    }
    const above = path.dirname(folder);
    if (above === folder || isDirectory(above)) throw error;
    makeFolder(above);
    fs.mkdirSync(folder, { mode: 0o700 });
  }
}

function isDirectory(folder: string): boolean {
  return fs.statSync(folder, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

/** The `code` of an error of the disk; any other error is a fault and is thrown on. */
export function codeOf(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  throw error;
}

function factsOf(stats: fs.Stats): FileFacts {
  return {
    plain: stats.isFile(),
    bytes: stats.size,
    changedMs: stats.mtimeMs,
    identity: `${stats.dev}:${stats.ino}`,
  };
}
