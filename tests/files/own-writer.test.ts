import { cpSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { aBoatFolder, aFolder, loaded, saved, textsIn } from '../helpers/a-boat-folder.ts';
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
    ['another’s', (file: string) => writeFileSync(file, 'hoveshort-mark 1 abcdefgh')],
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

  it('is not taken twice: a name that is already a file’s is passed over', async () => {
    const boat = aBoatFolder();
    const names = ['abcdefgh', 'abcdefgh', 'abcdefgj'];
    const newWriter = () => names.shift()!;
    await saved(boat.open({ newWriter }), aRemark('one'));
    const [two] = await saved(boat.open({ newWriter, machine: '0123456789abcdef' }), aRemark('two'));
    expect(two!.writer).toBe('abcdefgj');
  });
});
