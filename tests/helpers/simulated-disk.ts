import { dirname } from 'node:path';
import type { Disk, FileFacts, Opening } from '../../source/files/disk.ts';

/** A chance between 0 and 1, from a seeded stream. */
export type Chance = () => number;

/** Thrown at the call during which the power goes. It has no code, so no part of the program can take it for a trouble. */
export class PowerCut extends Error {}

export interface Fault {
  /** The call, counted from 1, at which it begins. */
  readonly at: number;
  readonly how: 'power cut' | 'EIO' | 'ENOSPC' | 'short write';
  /** Goes on for this many calls of its kind. */
  readonly lasts: number;
}

interface File {
  readonly id: number;
  /** What a program sees. */
  bytes: Buffer;
  /** What is on the platter for certain. */
  kept: Buffer;
  /** Written since the last sync, in order: bytes at a place, or a new length. */
  pending: ({ readonly at: number; readonly bytes: Buffer } | { readonly length: number })[];
  changed: number;
}

type NameChange =
  | { readonly how: 'set'; readonly path: string; readonly file: File | 'folder' }
  | { readonly how: 'delete'; readonly path: string }
  | { readonly how: 'rename'; readonly from: string; readonly to: string; readonly file: File };

/**
 * A disk in memory that can lose power and fail. After a power cut only what was synced is there for certain: of everything written since, any part may
 * be there, in any order, torn anywhere, with zeros or old bytes in between; of every name made, changed or removed since, any may be missing.
 * After a sync that failed, what it should have kept is lost at the next power cut, and no later sync keeps it.
 */
export class SimulatedDisk implements Disk {
  calls = 0;
  /** Every fault that has been met, for the test to know that something was to be told. */
  readonly met: string[] = [];
  #fault: Fault | null = null;
  #names = new Map<string, File | 'folder'>();
  #keptNames = new Map<string, File | 'folder'>();
  #pendingNames: NameChange[] = [];
  #open = new Map<number, { file: File; appending: boolean }>();
  #next = 1;
  readonly #chance: Chance;

  constructor(chance: Chance, folders: readonly string[], files: Readonly<Record<string, string>>) {
    this.#chance = chance;
    for (const folder of folders) this.#names.set(folder, 'folder');
    for (const [path, text] of Object.entries(files)) {
      const bytes = Buffer.from(text);
      this.#names.set(path, { id: this.#next++, bytes, kept: bytes, pending: [], changed: 0 });
    }
    this.#keptNames = new Map(this.#names);
  }

  /** The next fault, counted from the next call. */
  arm(fault: Fault | null): void {
    this.calls = 0;
    this.#fault = fault;
  }

  /** The power has gone and come back. */
  restart(): void {
    const names = new Map(this.#keptNames);
    for (const change of this.#pendingNames) {
      if (this.#chance() < 0.5) applyName(names, change);
    }
    const files = new Set([...names.values()].filter((one) => one !== 'folder'));
    for (const file of files) {
      file.bytes = this.#survived(file);
      file.kept = file.bytes;
      file.pending = [];
    }
    for (const [path, one] of [...names]) {
      if (one !== 'folder' && names.get(dirname(path)) !== 'folder') names.delete(path);
    }
    this.#names = names;
    this.#keptNames = new Map(names);
    this.#pendingNames = [];
    this.#open.clear();
  }

  /** The bytes of a file as a program would see them now. */
  see(path: string): Buffer | null {
    const file = this.#names.get(path);
    return file && file !== 'folder' ? file.bytes : null;
  }

  /** Puts a file there, as if it had always been. */
  put(path: string, bytes: Uint8Array): void {
    const kept = Buffer.from(bytes);
    const file = { id: this.#next++, bytes: kept, kept, pending: [], changed: 0 };
    this.#names.set(path, file);
    this.#keptNames.set(path, file);
  }

  list(folder: string): string[] {
    this.#call('read');
    this.#folder(folder);
    return [...this.#names.keys()]
      .filter((path) => dirname(path) === folder)
      .map((path) => path.slice(folder.length + 1));
  }

  isFolder(path: string): boolean {
    this.#call('read');
    return this.#named(path) === 'folder';
  }

  makeFolder(folder: string): void {
    if (this.#names.get(folder) === 'folder') return;
    this.#call('write');
    this.#change({ how: 'set', path: folder, file: 'folder' });
  }

  real(path: string): string {
    this.#call('read');
    this.#named(path);
    return path;
  }

  facts(path: string): FileFacts {
    this.#call('read');
    const file = this.#named(path);
    return file === 'folder' ? { plain: false, bytes: 0, changedMs: 0, identity: path } : factsOf(file);
  }

  mayWrite(path: string): void {
    this.#named(path);
  }

  roomBytes(): number {
    return 1e12;
  }

  open(path: string, opening: Opening): number {
    this.#call(opening === 'read' ? 'read' : 'write');
    const found = this.#names.get(path);
    if (found === 'folder') throw coded('EISDIR');
    const makes = opening === 'new append' || opening === 'new' || opening === 'create or change';
    if (!found && !makes) throw coded('ENOENT');
    if (found && (opening === 'new append' || opening === 'new')) throw coded('EEXIST');
    const file = found ?? {
      id: this.#next++,
      bytes: Buffer.of(),
      kept: Buffer.of(),
      pending: [],
      changed: 0,
    };
    if (!found) this.#change({ how: 'set', path, file });
    const opened = this.#next++;
    this.#open.set(opened, { file, appending: opening === 'append' || opening === 'new append' });
    return opened;
  }

  openFacts(opened: number): FileFacts {
    this.#call('read');
    return factsOf(this.#opened(opened).file);
  }

  read(opened: number, into: Uint8Array, position: number): number {
    this.#call('read');
    const got = this.#opened(opened).file.bytes.subarray(position, position + into.length);
    into.set(got);
    return got.length;
  }

  write(opened: number, bytes: Uint8Array, position: number | null): number {
    const { file, appending } = this.#opened(opened);
    const at = appending || position === null ? file.bytes.length : position;
    const part = Buffer.from(bytes.subarray(0, Math.floor(this.#chance() * bytes.length)));
    if (this.#call('write', () => this.#put(file, at, part)) === 'short write') {
      this.#put(file, at, part);
      return part.length;
    }
    this.#put(file, at, Buffer.from(bytes));
    return bytes.length;
  }

  cut(_path: string, opened: number, length: number): void {
    this.#call('write');
    const { file } = this.#opened(opened);
    file.bytes = file.bytes.subarray(0, length);
    file.pending.push({ length });
    file.changed += 1;
  }

  syncData(opened: number): void {
    const { file } = this.#opened(opened);
    this.#call('sync', () => {
      file.pending = [];
    });
    file.kept = file.bytes;
    file.pending = [];
  }

  sync(opened: number): void {
    this.syncData(opened);
  }

  syncFolder(folder: string): void {
    this.#call('sync');
    const here = (change: NameChange) =>
      dirname(change.how === 'rename' ? change.to : change.path) === folder;
    for (const change of this.#pendingNames.filter(here)) applyName(this.#keptNames, change);
    this.#pendingNames = this.#pendingNames.filter((change) => !here(change));
  }

  close(opened: number): void {
    this.#open.delete(opened);
  }

  rename(from: string, to: string): void {
    this.#call('write');
    const file = this.#named(from);
    if (file === 'folder') throw coded('EISDIR');
    this.#change({ how: 'rename', from, to, file });
  }

  remove(path: string): void {
    this.#call('write');
    this.#named(path);
    this.#change({ how: 'delete', path });
  }

  removeFolder(folder: string): void {
    if (this.list(folder).length > 0) throw coded('ENOTEMPTY');
    this.remove(folder);
  }

  /** Counts the call and fails it where that is its turn. `halfway` is what a failing call may still have done. */
  #call(kind: 'read' | 'write' | 'sync', halfway: () => void = () => {}): 'short write' | null {
    this.calls += 1;
    const fault = this.#fault;
    if (!fault || this.calls < fault.at) return null;
    if (fault.how === 'power cut') {
      if (this.#chance() < 0.5) halfway();
      throw new PowerCut();
    }
    const strikes =
      fault.how === 'EIO' || (kind === 'write' && (fault.how === 'ENOSPC' || fault.how === 'short write'));
    if (!strikes) return null;
    this.#fault = fault.lasts > 1 ? { ...fault, lasts: fault.lasts - 1 } : null;
    this.met.push(`${fault.how} at ${kind}`);
    if (fault.how === 'short write') return 'short write';
    if (fault.how === 'EIO' && this.#chance() < 0.5) halfway();
    throw coded(fault.how);
  }

  #put(file: File, at: number, bytes: Buffer): void {
    file.bytes = overlaid(file.bytes, at, bytes);
    file.pending.push({ at, bytes });
    file.changed += 1;
  }

  #survived(file: File): Buffer {
    let bytes = file.kept;
    const order = file.pending.filter(() => this.#chance() < 0.7);
    if (this.#chance() < 0.3) order.reverse();
    for (const one of order) {
      if ('length' in one) {
        bytes = bytes.subarray(0, one.length);
        continue;
      }
      const from = this.#chance() < 0.3 ? Math.floor(this.#chance() * one.bytes.length) : 0;
      const to = this.#chance() < 0.5 ? Math.floor(this.#chance() * one.bytes.length) + 1 : one.bytes.length;
      if (from < to)
        bytes = overlaid(bytes, one.at + from, one.bytes.subarray(from, to), this.#chance() < 0.5 ? 0 : 0x78);
    }
    return bytes;
  }

  #change(change: NameChange): void {
    applyName(this.#names, change);
    this.#pendingNames.push(change);
  }

  #named(path: string): File | 'folder' {
    const found = this.#names.get(path);
    if (!found) throw coded('ENOENT');
    return found;
  }

  #folder(path: string): void {
    if (this.#named(path) !== 'folder') throw coded('ENOTDIR');
  }

  #opened(opened: number): { file: File; appending: boolean } {
    const found = this.#open.get(opened);
    if (!found) throw coded('EBADF');
    return found;
  }
}

function applyName(names: Map<string, File | 'folder'>, change: NameChange): void {
  if (change.how === 'set') names.set(change.path, change.file);
  else if (change.how === 'delete') names.delete(change.path);
  else {
    names.delete(change.from);
    names.set(change.to, change.file);
  }
}

function overlaid(bytes: Buffer, at: number, added: Buffer, filling = 0): Buffer {
  const whole = Buffer.alloc(Math.max(bytes.length, at + added.length), filling);
  bytes.copy(whole);
  added.copy(whole, at);
  return whole;
}

function factsOf(file: File): FileFacts {
  return { plain: true, bytes: file.bytes.length, changedMs: file.changed, identity: String(file.id) };
}

function coded(code: string): Error {
  return Object.assign(new Error(code), { code });
}
