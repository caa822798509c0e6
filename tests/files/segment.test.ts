import { appendFileSync, copyFileSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { aBoatFolder, bytesOf, hasty, loaded, saved, textsIn } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

const disk = { ...realDisk, ...hasty.disk };
const failing = (code: string) => () => {
  throw Object.assign(new Error(code), { code });
};

async function aWrittenBoat() {
  const boat = aBoatFolder();
  await saved(boat.open(hasty), aRemark('one'));
  return { boat, file: boat.files()[0] as string };
}

describe('saving by a program that has read nothing yet', () => {
  it('ends the line that was cut off first, so that both stand on lines of their own', async () => {
    const { boat, file } = await aWrittenBoat();
    const before = readFileSync(file, 'utf8');
    appendFileSync(file, '{"v":1,"id"');
    const open = boat.open(hasty);
    expect(await saved(open, aRemark('two'))).toMatchObject([{ n: 2 }]);
    await saved(open, aRemark('three'));
    expect(readFileSync(file, 'utf8').startsWith(`${before}{"v":1,"id"\n{`)).toBe(true);
    expect(await textsIn(open)).toEqual(['one', 'two', 'three']);
    expect((await loaded(boat.open(hasty))).troubles).toEqual([]);
  });

  it('goes on from a line of which only the line end is wanting', async () => {
    const { boat, file } = await aWrittenBoat();
    writeFileSync(file, bytesOf(file).subarray(0, -1));
    expect(await saved(boat.open(hasty), aRemark('two'))).toMatchObject([{ n: 2 }]);
    expect((await loaded(boat.open(hasty))).troubles).toEqual([]);
  });
});

describe('saving to a file that is another by the time it is opened', () => {
  it.each([
    [
      'replaced',
      (file: string) => {
        copyFileSync(file, `${file}.new`);
        renameSync(`${file}.new`, file);
      },
    ],
    ['longer', (file: string) => appendFileSync(file, 'x')],
  ])('as it was %s writes nothing, and says the entry is not saved', async (_, change) => {
    const { boat, file } = await aWrittenBoat();
    const open: typeof realDisk.open = (path, opening) => {
      if (opening === 'append') change(file);
      return realDisk.open(path, opening);
    };
    const changing = boat.open({ ...hasty, disk: { ...disk, open } });
    expect(await changing.append([aRemark('two')])).toMatchObject({
      ok: false,
      troubles: [{ kind: 'not saved', code: 'ESTALE' }],
    });
    expect(readFileSync(file, 'utf8')).not.toContain('two');
    expect(await saved(boat.open(hasty), aRemark('two'))).toMatchObject([{ n: 2 }]);
  });
});

describe('a log that is no folder', () => {
  it('is said before anyone types, and nothing is saved', async () => {
    const { boat } = await aWrittenBoat();
    rmSync(boat.log, { recursive: true });
    writeFileSync(boat.log, 'a file');
    const open = boat.open(hasty);
    expect((await loaded(open)).readOnly).toEqual({ kind: 'not a plain file', file: 'log' });
    expect(await open.append([aRemark('two')])).toMatchObject({
      ok: false,
      troubles: [{ kind: 'not saved', code: 'ENOTDIR' }],
    });
    expect(readFileSync(boat.log, 'utf8')).toBe('a file');
  });
});

describe('a file the disk fails to sync when it is read', () => {
  it('is read all the same, and the next entry goes to a new file', async () => {
    const { boat } = await aWrittenBoat();
    let fail = true;
    const syncData = (file: number) => (fail ? failing('EIO')() : realDisk.syncData(file));
    const open = boat.open({ ...hasty, disk: { ...disk, syncData } });
    expect(await textsIn(open)).toEqual(['one']);
    fail = false;
    await saved(open, aRemark('two'));
    expect(boat.files()).toHaveLength(2);
    expect(await textsIn(boat.open(hasty))).toEqual(['one', 'two']);
  });
});

describe('a mark that cannot be written', () => {
  it('makes nothing unsaved: it lags, and the entries are there', async () => {
    const { boat } = await aWrittenBoat();
    const open: typeof realDisk.open = (path, opening) =>
      opening === 'create or change' ? failing('EACCES')() : realDisk.open(path, opening);
    await saved(boat.open({ ...hasty, disk: { ...disk, open } }), aRemark('two'));
    expect(await saved(boat.open(hasty), aRemark('three'))).toMatchObject([{ n: 3 }]);
    expect((await loaded(boat.open(hasty))).troubles).toEqual([]);
  });
});
