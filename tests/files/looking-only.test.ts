import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { aBoatFolder, bytesOf, loaded, saved } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

const root = process.getuid?.() === 0;
const refusing = (code: string) => () => {
  throw Object.assign(new Error(code), { code });
};

describe('a boat folder that cannot be written to', () => {
  it('says so before anyone types, and can still be looked at', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const disk = { ...realDisk, mayWrite: refusing('EROFS'), open: refusingWrites('EROFS') };
    const open = boat.open({ disk });
    expect(await loaded(open)).toMatchObject({
      entries: [{ text: 'one' }],
      readOnly: { kind: 'read only', folder: boat.folder, code: 'EROFS' },
    });
    const lost = aRemark('typed nevertheless');
    expect(await open.append([lost])).toEqual({
      ok: false,
      troubles: [{ kind: 'not saved', code: 'EROFS', text: JSON.stringify(lost) }],
    });
  });

  it.skipIf(process.getuid === undefined)(
    'by the rights of its files is found out too (as another person where the tests run as root)',
    () => {
      const boat = aBoatFolder();
      for (const folder of [boat.folder, boat.state]) chmodSync(folder, 0o755);
      chmodSync(join(boat.folder, 'boat.json'), 0o644);
      chmodSync(boat.folder, 0o555);
      const script = `
      const { boatFolder } = await import(${JSON.stringify(join(import.meta.dirname, '../../source/files/boat-folder.ts'))});
      const { keepingOn } = await import(${JSON.stringify(join(import.meta.dirname, '../../source/files/keeping.ts'))});
      const read = await boatFolder(keepingOn(${JSON.stringify(boat.folder)}, ${JSON.stringify(boat.state)}, Date.now)).read();
      console.log(JSON.stringify(read.value.readOnly));`;
      const child = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
        ...(root ? { uid: 65534, gid: 65534 } : {}),
        encoding: 'utf8',
      });
      chmodSync(boat.folder, 0o755);
      expect(child.stderr).toBe('');
      expect(JSON.parse(child.stdout)).toEqual({ kind: 'read only', folder: boat.folder, code: 'EACCES' });
    },
  );

  it('for want of a place for its marks and locks is looked at only', async () => {
    const boat = aBoatFolder();
    const disk = {
      ...realDisk,
      mayWrite: (path: string) => (path.startsWith(boat.state) ? refusing('EACCES')() : undefined),
    };
    expect((await loaded(boat.open({ disk }))).readOnly).toEqual({
      kind: 'read only',
      folder: boat.state,
      code: 'EACCES',
    });
  });
});

describe('a disk that is filling up', () => {
  const withRoom = (bytes: number) => ({ disk: { ...realDisk, roomBytes: () => bytes } });

  it('is warned of under 50 MB, and nothing can be saved on a full one', async () => {
    const boat = aBoatFolder();
    expect((await loaded(boat.open(withRoom(51e6)))).troubles).toEqual([]);
    expect(await loaded(boat.open(withRoom(49e6)))).toMatchObject({
      troubles: [{ kind: 'little room', folder: boat.folder, bytes: 49e6 }],
      readOnly: null,
    });
    expect((await loaded(boat.open(withRoom(0)))).readOnly).toMatchObject({
      kind: 'read only',
      code: 'ENOSPC',
    });
  });

  it.each([
    ['takes nothing', 0, 'ENOSPC'],
    ['takes a part', 30, 'ENOSPC'],
  ])(
    'that %s of an entry leaves the log as it was, and says the entry is not saved',
    async (_, taken, code) => {
      const boat = aBoatFolder();
      await saved(boat.open(), aRemark('one'));
      const before = bytesOf(boat.files()[0]!);
      const write: typeof realDisk.write = (file, bytes, position) => {
        if (taken === 0) return refusing('ENOSPC')();
        return realDisk.write(file, bytes.subarray(0, taken), position);
      };
      const full = boat.open({ disk: { ...realDisk, write } });
      const drafts = [aRemark('two'), aRemark('three')];
      expect(await full.append(drafts)).toEqual({
        ok: false,
        troubles: [
          { kind: 'not saved', code, text: drafts.map((draft) => JSON.stringify(draft)).join('\n') },
        ],
      });
      expect(bytesOf(boat.files()[0]!)).toEqual(before);
      expect(await saved(boat.open(), aRemark('two'))).toMatchObject([{ n: 2 }]);
      expect((await loaded(boat.open())).troubles).toEqual([]);
    },
  );
});

describe('a disk that fails', () => {
  it('while syncing gets the entry into a new file, never the old one again, and the skipper is told', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    let failures = 1;
    const syncData = (file: number) => (failures-- > 0 ? refusing('EIO')() : realDisk.syncData(file));
    const disk = { ...realDisk, syncData };
    failures = 0;
    const open = boat.open({ disk });
    await loaded(open);
    failures = 1;
    expect(await saved(open, aRemark('two'))).toMatchObject([{ n: 2 }]);
    await saved(open, aRemark('three'));
    expect(boat.files()).toHaveLength(2);
    const { entries, troubles } = await loaded(open);
    expect(entries).toMatchObject([{ text: 'one' }, { text: 'two' }, { text: 'three' }]);
    expect(troubles).toMatchObject([{ kind: 'disk error', code: 'EIO' }]);
    expect((await loaded(boat.open())).entries).toHaveLength(3);
    expect((await loaded(boat.open())).troubles).toEqual([]);
  });

  it('for good leaves no trace of an entry that was not saved', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const disk = { ...realDisk };
    const open = boat.open({ disk });
    await loaded(open);
    disk.syncData = refusing('EIO');
    expect(await open.append([aRemark('two')])).toMatchObject({
      ok: false,
      troubles: [{ kind: 'not saved', code: 'EIO' }],
    });
    disk.syncData = realDisk.syncData;
    expect((await loaded(boat.open())).entries).toMatchObject([{ text: 'one' }]);
    expect(await saved(boat.open(), aRemark('two'))).toMatchObject([{ n: 2 }]);
  });
});

function refusingWrites(code: string): typeof realDisk.open {
  return (path, opening) => (opening === 'read' ? realDisk.open(path, opening) : refusing(code)());
}
