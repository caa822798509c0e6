import {
  cpSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { newFolder } from '../../source/files/new-boat.ts';
import { aBoatFolder, aFolder, hasty, loaded, saved, textsIn } from '../helpers/a-boat-folder.ts';
import { aBoatText } from '../helpers/a-boat-text.ts';
import { aRemark } from '../helpers/a-laptop.ts';

describe('the writer id', () => {
  it('stays the same from run to run', async () => {
    const boat = aBoatFolder();
    const [one] = await saved(boat.open(), aRemark('one'));
    const [two] = await saved(boat.open(), aRemark('two'));
    expect(two).toMatchObject({ writer: one!.writer, n: 2 });
  });

  it('is a new one on another laptop, in a copy of the folder', async () => {
    const boat = aBoatFolder();
    const [one] = await saved(boat.open(), aRemark('one'));
    const copy = aBoatFolder(join(aFolder(), 'stick'));
    cpSync(boat.folder, copy.folder, { recursive: true });
    const [two] = await saved(copy.open(), aRemark('two'));
    expect(two!.writer).not.toBe(one!.writer);
    expect(two).toMatchObject({ n: 1, lc: 2 });
    expect(await textsIn(copy.open())).toEqual(['one', 'two']);
  });

  it('is used in one of two copies on this laptop, and never twice for one number', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('together'));
    const copy = aBoatFolder(join(aFolder(), 'copy'), boat.state);
    cpSync(boat.folder, copy.folder, { recursive: true });
    const entries = [];
    for (let i = 0; i < 4; i += 1) {
      for (const one of [boat, copy]) entries.push(...(await saved(one.open(), aRemark(`entry ${i}`))));
    }
    expect(new Set(entries.map(({ id }) => id)).size).toBe(8);
  });

  it('is a new one where another machine’s marks were copied along', async () => {
    const boat = aBoatFolder();
    const [one] = await saved(boat.open(), aRemark('one'));
    const [two] = await saved(boat.open({ machine: '0123456789abcdef' }), aRemark('two'));
    expect(two!.writer).not.toBe(one!.writer);
  });

  it.each([
    ['gone', (file: string) => rmSync(file)],
    ['zeros', (file: string) => writeFileSync(file, Buffer.alloc(60))],
    ['empty', (file: string) => writeFileSync(file, '')],
    ['another’s', (file: string) => writeFileSync(file, 'hoveshort-mark 2 abcdefgh')],
  ])('is a new one where its mark is %s, and nothing is lost', async (_, spoil) => {
    const boat = aBoatFolder();
    const [one] = await saved(boat.open(), aRemark('one'));
    spoil(join(boat.state, `${one!.writer}.mark`));
    const [two] = await saved(boat.open(), aRemark('two'));
    expect(two!.writer).not.toBe(one!.writer);
    expect(await textsIn(boat.open())).toEqual(['one', 'two']);
    expect((await loaded(boat.open())).troubles).toEqual([]);
  });

  it('goes on where the mark lags behind, as after a power cut', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const mark = join(boat.state, readdirSync(boat.state).find((name) => name.endsWith('.mark'))!);
    const lagging = aFolder();
    cpSync(mark, join(lagging, 'mark'));
    await saved(boat.open(), aRemark('two'), aRemark('three'));
    cpSync(join(lagging, 'mark'), mark);
    expect(await saved(boat.open(), aRemark('four'))).toMatchObject([{ n: 4 }]);
    expect((await loaded(boat.open())).troubles).toEqual([]);
  });

  it('is a new one while a file of its own cannot be read and the mark lags behind: no number is used twice', async () => {
    const boat = aBoatFolder();
    const [one] = await saved(boat.open(hasty), aRemark('one'));
    const first = boat.files()[0]!;
    const mark = join(boat.state, `${one!.writer}.mark`);
    const lagging = readFileSync(mark);
    const end = statSync(first).size;
    const [two] = await saved(boat.open(hasty), aRemark('two'));
    const second = join(boat.log, `${one!.writer}-0002.ndjson`);
    writeFileSync(second, readFileSync(first).subarray(end));
    truncateSync(first, end);
    writeFileSync(mark, lagging);

    const open: typeof realDisk.open = (path, opening) => {
      if (path === second && opening === 'read') throw Object.assign(new Error('EIO'), { code: 'EIO' });
      return realDisk.open(path, opening);
    };
    const failing = boat.open({ ...hasty, disk: { ...realDisk, ...hasty.disk, open } });
    const [three] = await saved(failing, aRemark('three'));
    expect(three!.id).not.toBe(two!.id);
    expect((await textsIn(boat.open(hasty))).sort()).toEqual(['one', 'three', 'two']);
    expect((await loaded(boat.open(hasty))).troubles).toEqual([]);
  });

  it('is not taken twice: a name that is already a file’s is passed over', async () => {
    const boat = aBoatFolder();
    const names = ['abcdefgh', 'abcdefgh', 'abcdefgj'];
    const newWriter = () => names.shift()!;
    await saved(boat.open({ newWriter }), aRemark('one'));
    const [two] = await saved(boat.open({ newWriter, machine: '0123456789abcdef' }), aRemark('two'));
    expect(two!.writer).toBe('abcdefgj');
  });
});

describe('a log file of this laptop that is gone', () => {
  it('is told, with the numbers that are missing, and the next entry goes under another writer id', async () => {
    const boat = aBoatFolder();
    const [one] = await saved(boat.open(), aRemark('one'), aRemark('two'));
    rmSync(boat.files()[0]!);
    const told = {
      kind: 'lines missing',
      place: { file: `log/${one!.writer}.ndjson` },
      writer: one!.writer,
      from: 1,
      to: 2,
      why: 'file gone',
    };
    expect((await loaded(boat.open())).troubles).toEqual([told]);
    const [three] = await saved(boat.open(), aRemark('three'));
    expect(three!.writer).not.toBe(one!.writer);
    expect((await loaded(boat.open())).troubles).toEqual([told]);
    rmSync(boat.log, { recursive: true });
    expect((await loaded(boat.open())).troubles).toHaveLength(2);
  });

  it('is no longer told once it is back', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const away = join(aFolder(), 'away');
    renameSync(boat.log, away);
    expect((await loaded(boat.open())).troubles).toHaveLength(1);
    renameSync(away, boat.log);
    expect((await loaded(boat.open())).troubles).toEqual([]);
  });

  it('is none of another boat of this laptop, nor of a folder that was moved', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const other = aBoatFolder(join(aFolder(), 'other'), boat.state);
    expect((await loaded(other.open())).troubles).toEqual([]);
    const moved = join(aFolder(), 'moved');
    renameSync(boat.folder, moved);
    expect((await loaded(aBoatFolder(moved, boat.state).open())).troubles).toEqual([]);
  });

  it('is none of a boat made anew where one was thrown away', async () => {
    const [folder, state] = [join(aFolder(), 'whimbrel'), aFolder()];
    const make = async () => {
      const place = newFolder((where) => keepingOn(where, state, Date.now), folder);
      if (!place.ok) throw new Error(JSON.stringify(place.troubles));
      return await place.value.fill(aBoatText, [aRemark('made')]);
    };
    await make();
    rmSync(join(folder, 'log'), { recursive: true });
    expect((await loaded(aBoatFolder(folder, state).open())).troubles).toMatchObject([{ why: 'file gone' }]);
    rmSync(folder, { recursive: true });
    await make();
    expect((await loaded(aBoatFolder(folder, state).open())).troubles).toEqual([]);
  });
});
