import { writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
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
  it.each([
    ['cut off', (_rest: Buffer) => Buffer.of()],
    ['and zeros after it', (rest: Buffer) => Buffer.alloc(rest.length)],
    ['and garbage after it', (rest: Buffer) => Buffer.from(rest.map((byte) => byte ^ 0x95))],
    [
      'and old bytes with line ends after it',
      (rest: Buffer) => Buffer.from('5}\n{"v":1\n'.repeat(20)).subarray(0, rest.length),
    ],
  ])(
    'at any byte of its line, %s, loses nothing saved before, and the next entry is saved whole',
    async (_, fill) => {
      const { boat, file, bytes: confirmed, mark, marked } = await aWrittenBoat('one', 'two');
      await saved(boat.open(hasty), aRemark('three'));
      const bytes = bytesOf(file);
      for (let cut = confirmed.length; cut < bytes.length; cut += 1) {
        writeFileSync(file, Buffer.concat([bytes.subarray(0, cut), fill(bytes.subarray(cut))]));
        writeFileSync(mark, marked);
        const open = boat.open(hasty);
        const whole = cut === bytes.length - 1 && fill(Buffer.of(0x0a)).length === 0;
        const before = whole ? ['one', 'two', 'three'] : ['one', 'two'];
        expect(await textsIn(open), `cut at ${cut}`).toEqual(before);
        const [after] = await saved(open, aRemark('after'));
        expect(file).toContain(after!.writer);
        for (const again of [open, boat.open(hasty)])
          expect(await textsIn(again)).toEqual([...before, 'after']);
      }
    },
  );

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

describe('one bit turned anywhere in a log', () => {
  it('is always told, and costs at most two lines', async () => {
    const { boat, file, bytes } = await aWrittenBoat('one', 'two', 'three', 'four');
    const all = ['one', 'two', 'three', 'four'];
    for (let at = 0; at < bytes.length; at += 1) {
      const turned = Buffer.from(bytes);
      turned[at]! ^= 1 << (at % 8);
      writeFileSync(file, turned);
      const { entries, troubles } = await loaded(boat.open(hasty));
      const texts = entries.map((entry) => entry.kind === 'remark' && entry.text);
      expect(told(troubles), `byte ${at}`).not.toEqual([]);
      expect(texts.length, `byte ${at}`).toBeGreaterThanOrEqual(2);
      expect(all.filter((text) => texts.includes(text))).toEqual(texts);
    }
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
