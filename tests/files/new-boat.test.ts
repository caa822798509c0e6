import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { type Disk, realDisk } from '../../source/files/disk.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { newFolder } from '../../source/files/new-boat.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { aFolder } from '../helpers/a-boat-folder.ts';
import { aBoatText } from '../helpers/a-boat-text.ts';

const drafts: readonly Draft[] = [
  { kind: 'dip', at: '2026-02-03T07:00:00Z', fluid: 'gear-oil', level: 1.2 },
  { kind: 'remark', at: '2026-02-03T07:01:00Z', text: 'began the log' },
];
const now = () => Date.UTC(2026, 1, 3, 7, 40);

function keepingIn(home: string, disk: Disk = realDisk) {
  const state = join(home, 'state');
  return (folder: string) => ({ ...keepingOn(folder, state, now), disk });
}

async function made(home: string, folder: string, disk?: Disk) {
  const place = newFolder(keepingIn(home, disk), folder);
  return place.ok ? await place.value.fill(aBoatText, drafts) : place;
}

const boats = (home: string) => readdirSync(home).filter((name) => name !== 'state');

describe('a new boat folder', () => {
  it('holds its boat file and its first entries, and goes on as any other', async () => {
    const home = aFolder();
    const folder = join(home, 'boats', 'godwit');
    expect(await made(home, folder)).toMatchObject({ ok: true });
    expect(readFileSync(join(folder, 'boat.json'), 'utf8')).toBe(aBoatText);
    const opened = boatFolder(keepingIn(home)(folder));
    const read = await opened.read();
    expect(read).toMatchObject({ ok: true, value: { troubles: [], readOnly: null } });
    expect(read.ok && read.value.entries.map(({ kind }) => kind)).toEqual(['dip', 'remark']);
    expect(await opened.append([{ kind: 'remark', at: '2026-02-03T08:00:00Z', text: 'more' }])).toMatchObject(
      {
        ok: true,
      },
    );
    expect(readdirSync(join(folder, 'log'))).toHaveLength(1);
    expect(readdirSync(join(home, 'boats'))).toEqual(['godwit']);
  });

  it('may take the place of an empty one', async () => {
    const home = aFolder();
    const folder = join(home, 'godwit');
    mkdirSync(folder);
    expect(await made(home, folder)).toMatchObject({ ok: true });
    expect(boats(home)).toEqual(['godwit']);
  });

  it('never takes the place of a folder that holds anything, or of a file', async () => {
    const home = aFolder();
    const folder = join(home, 'godwit');
    mkdirSync(folder);
    writeFileSync(join(folder, 'letter.txt'), 'dear');
    expect(await made(home, folder)).toEqual({ ok: false, troubles: [{ kind: 'folder not empty', folder }] });
    const file = join(folder, 'letter.txt');
    const troubles = [{ kind: 'cannot make', folder: file, code: 'EEXIST' }];
    expect(await made(home, file)).toEqual({ ok: false, troubles });
    expect(await made(home, join(file, 'below'))).toMatchObject({ troubles: [{ code: 'ENOTDIR' }] });
    expect(readdirSync(folder)).toEqual(['letter.txt']);
    expect(readFileSync(file, 'utf8')).toBe('dear');
  });

  it.skipIf(!existsSync('/proc/self'))(
    'is refused where nothing can be made (skipped without /proc)',
    async () => {
      const home = aFolder();
      for (const folder of ['/proc/godwit', '/proc/godwit/below'])
        expect(await made(home, folder)).toEqual({
          ok: false,
          troubles: [{ kind: 'cannot make', folder, code: 'ENOENT' }],
        });
    },
  );

  it('is whole or not there at all, whichever call of the disk fails', async () => {
    let failures = 0;
    for (let failing = 1; ; failing += 1) {
      const home = aFolder();
      const folder = join(home, 'godwit');
      let calls = 0;
      const disk = failingAt(() => {
        calls += 1;
        return calls === failing;
      });
      const result = await made(home, folder, disk);
      if (calls < failing) break;
      failures += 1;
      if (result.ok || existsSync(folder)) {
        const read = await boatFolder(keepingIn(home)(folder)).read();
        expect(read.ok && read.value.entries).toHaveLength(2);
      } else {
        expect(result.troubles).toMatchObject([{ kind: 'cannot make', folder, code: 'ENOSPC' }]);
        expect(boats(home).filter((name) => name !== 'godwit.new')).toEqual([]);
      }
    }
    expect(failures).toBeGreaterThan(10);
  });
});

/** The disk of this computer, whose writing calls fail when told to. */
function failingAt(fails: () => boolean): Disk {
  const guard =
    <A extends unknown[], R>(call: (...args: A) => R) =>
    (...args: A): R => {
      if (fails()) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      return call(...args);
    };
  const { makeFolder, open, write, sync, syncData, syncFolder, rename, removeFolder } = realDisk;
  return {
    ...realDisk,
    makeFolder: guard(makeFolder),
    open: guard(open),
    write: guard(write),
    sync: guard(sync),
    syncData: guard(syncData),
    syncFolder: guard(syncFolder),
    rename: guard(rename),
    removeFolder: guard(removeFolder),
  };
}
