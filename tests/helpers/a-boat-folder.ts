import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { realDisk } from '../../source/files/disk.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import type { Keeping } from '../../source/files/shelf.ts';
import type { Draft, Entry } from '../../source/logbook/entries.ts';
import type { BoatFolder, LoadedBoat } from '../../source/outside.ts';
import { aBoatText } from './a-boat-text.ts';

/** An empty folder on the disk, gone when the test is. */
export function aFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hoveshort-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface BoatOnDisk {
  readonly folder: string;
  readonly state: string;
  readonly log: string;
  /** Opens it as a program just started would. */
  open(change?: Partial<Keeping>): ReturnType<typeof boatFolder>;
  /** The files of the log, with their paths. */
  files(): string[];
}

/** A boat folder on the disk with an empty log, and this laptop's folder for marks and locks beside it. */
export function aBoatFolder(folder = aFolder(), state = aFolder()): BoatOnDisk {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'boat.json'), aBoatText);
  const log = join(folder, 'log');
  return {
    folder,
    state,
    log,
    open: (change) => boatFolder({ ...keepingOn(folder, state, Date.now), ...change }),
    files: () =>
      readdirSync(log)
        .filter((name) => name.endsWith('.ndjson'))
        .sort((a, b) => a.length - b.length || (a < b ? -1 : 1))
        .map((name) => join(log, name)),
  };
}

/** What `read` gives, or a thrown error with the troubles. */
export async function loaded(boat: BoatFolder): Promise<LoadedBoat> {
  const read = await boat.read();
  if (!read.ok) throw new Error(JSON.stringify(read.troubles));
  return read.value;
}

/** What `append` gives, or a thrown error with the troubles. */
export async function saved(boat: BoatFolder, ...drafts: Draft[]): Promise<readonly Entry[]> {
  const result = await boat.append(drafts);
  if (!result.ok) throw new Error(JSON.stringify(result.troubles));
  return result.value;
}

export async function textsIn(boat: BoatFolder): Promise<string[]> {
  const { entries } = await loaded(boat);
  return entries.flatMap((entry) => (entry.kind === 'remark' ? [entry.text] : []));
}

/** For tests of what is read and written rather than of what survives: the same disk without waiting for it, and no lock. */
export const hasty: Partial<Keeping> = {
  disk: { ...realDisk, syncData: () => {}, sync: () => {}, syncFolder: () => {} },
  lock: (_, work) => work(),
};

export function bytesOf(file: string): Buffer {
  return readFileSync(file);
}
