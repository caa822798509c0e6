import { appendFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import type { Trouble } from '../../source/trouble.ts';
import { aBoatFolder, bytesOf, hasty, loaded, saved, textsIn } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

/** A boat whose own laptop has saved some entries, and her log file with its bytes. */
async function aWrittenBoat(...texts: string[]) {
  const boat = aBoatFolder();
  for (const text of texts) await saved(boat.open(hasty), aRemark(text));
  const file = boat.files()[0]!;
  const mark = join(boat.state, basename(file).replace('ndjson', 'mark'));
  return { boat, file, bytes: bytesOf(file), mark, marked: bytesOf(mark) };
}

const told = (troubles: readonly Trouble[]) => troubles.filter(({ kind }) => kind !== 'little room');

describe('a power cut while an entry was saved', () => {
  it('is told once, with the text of the line, and no longer once the next entry is saved', async () => {
    const { boat, file, bytes } = await aWrittenBoat('one', 'two');
    const torn = '{"v":1,"id":"k7m2q9xd-3","p":"0000';
    writeFileSync(file, Buffer.concat([bytes, Buffer.from(torn)]));
    const open = boat.open(hasty);
    expect(told((await loaded(open)).troubles)).toMatchObject([
      { kind: 'line cut off', place: { line: 3 }, text: torn },
    ]);
    expect(bytesOf(file).toString()).toBe(`${bytes}${torn}\n`);
    await saved(open, aRemark('three'));
    expect(told((await loaded(open)).troubles)).toEqual([]);
    expect(told((await loaded(boat.open(hasty))).troubles)).toEqual([]);
    expect(await textsIn(boat.open(hasty))).toEqual(['one', 'two', 'three']);
  });

  it('that took only the line end loses nothing and says nothing', async () => {
    const { boat, file, bytes } = await aWrittenBoat('one', 'two');
    writeFileSync(file, bytes.subarray(0, -1));
    const open = boat.open(hasty);
    expect(told((await loaded(open)).troubles)).toEqual([]);
    await saved(open, aRemark('three'));
    expect(await textsIn(boat.open(hasty))).toEqual(['one', 'two', 'three']);
  });

  it('on another laptop leaves that laptop’s file alone: copies must stay beginnings of one another', async () => {
    const { boat } = await aWrittenBoat('ours');
    const theirs = await aWrittenBoat('theirs', 'theirs too');
    const copy = join(boat.log, 'abcdefgh.ndjson');
    const torn = Buffer.from(
      theirs.bytes
        .subarray(0, -9)
        .toString()
        .replaceAll(/"id":"\w{8}/g, '"id":"abcdefgh'),
    );
    writeFileSync(copy, torn);
    const open = boat.open(hasty);
    await loaded(open);
    await saved(open, aRemark('ours too'));
    expect(bytesOf(copy)).toEqual(torn);
  });
});

describe('a line cut off that another program deals with at the same time', () => {
  const torn = '{"v":1,"id":"k7m2q9xd-3","p":"0000';

  it('is ended by it, and not a second time', async () => {
    const { boat, file, bytes } = await aWrittenBoat('one');
    writeFileSync(file, Buffer.concat([bytes, Buffer.from(torn)]));
    const lock = <T>(_: string, work: () => T) => {
      appendFileSync(file, '\n');
      return work();
    };
    await loaded(boat.open({ ...hasty, lock }));
    expect(bytesOf(file).toString()).toBe(`${bytes}${torn}\n`);
  });

  it('is left alone where this laptop’s mark is gone by the time its turn has come', async () => {
    const { boat, file, bytes, mark } = await aWrittenBoat('one');
    writeFileSync(file, Buffer.concat([bytes, Buffer.from(torn)]));
    const lock = <T>(_: string, work: () => T) => {
      rmSync(mark);
      return work();
    };
    await loaded(boat.open({ ...hasty, lock }));
    expect(bytesOf(file).toString()).toBe(`${bytes}${torn}`);
  });

  it('is left alone where the file has grown by the time it is opened', async () => {
    const { boat, file, bytes } = await aWrittenBoat('one');
    writeFileSync(file, Buffer.concat([bytes, Buffer.from(torn)]));
    const open: typeof realDisk.open = (path, opening) => {
      if (opening === 'append') appendFileSync(file, 'x');
      return realDisk.open(path, opening);
    };
    await loaded(boat.open({ ...hasty, disk: { ...realDisk, ...hasty.disk, open } }));
    expect(bytesOf(file).toString()).toBe(`${bytes}${torn}x`);
  });
});

describe('a log that was once longer', () => {
  it('is told with the numbers that are missing, whatever line it ends at, and no number is used twice', async () => {
    const { boat, file, bytes } = await aWrittenBoat('one', 'two', 'three', 'four');
    const ends = [...bytes.entries()].filter(([, byte]) => byte === 0x0a).map(([at]) => at + 1);
    for (const [i, end] of [0, ...ends.slice(0, -1)].entries()) {
      writeFileSync(file, bytes.subarray(0, end));
      const { troubles } = await loaded(boat.open(hasty));
      expect(told(troubles)).toMatchObject([
        { kind: 'lines missing', from: i + 1, to: 4, why: 'older copy' },
      ]);
    }
    const [entry] = await saved(boat.open(hasty), aRemark('after'));
    expect(file).not.toContain(entry!.writer);
    expect(entry).toMatchObject({ n: 1 });
    writeFileSync(file, bytes);
    expect(told((await loaded(boat.open(hasty))).troubles)).toEqual([]);
    expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['after', 'four', 'one', 'three', 'two']);
  });
});

describe('a log file that another file has got in the place of', () => {
  it('is told, is not read to its end, and what stood before is kept; entries go on in a new file', async () => {
    const { boat, file, bytes } = await aWrittenBoat('one', 'two');
    writeFileSync(file, Buffer.concat([bytes, Buffer.alloc(3_000_000, '\n')]));
    const open = boat.open(hasty);
    const { troubles } = await loaded(open);
    expect(told(troubles)).toContainEqual({ kind: 'no log', file: `log/${basename(file)}`, lines: 100_000 });
    expect(troubles.length).toBeLessThan(110);
    await saved(open, aRemark('three'));
    expect(boat.files()).toHaveLength(2);
    expect(await textsIn(boat.open(hasty))).toEqual(['one', 'two', 'three']);
  });
});
