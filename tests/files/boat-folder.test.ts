import { execFileSync } from 'node:child_process';
import {
  appendFileSync,
  mkdirSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { aBoatFolder, aFolder, bytesOf, loaded, saved, textsIn } from '../helpers/a-boat-folder.ts';
import { aLaptop, aRemark } from '../helpers/a-laptop.ts';

const windows = process.platform === 'win32';

describe('a boat folder', () => {
  it('without a log is a boat with an empty log, and looking at it writes nothing', async () => {
    const boat = aBoatFolder();
    expect(await loaded(boat.open())).toMatchObject({
      entries: [],
      struck: [],
      troubles: [],
      readOnly: null,
    });
    expect(readdirSync(boat.folder)).toEqual(['boat.json']);
    expect(readdirSync(boat.state)).toEqual([]);
  });

  it('gives back what was saved, in this run and the next', async () => {
    const boat = aBoatFolder();
    const first = boat.open();
    const entries = await saved(first, aRemark('one'), aRemark('two'));
    expect(entries).toMatchObject([
      { n: 1, lc: 1, text: 'one' },
      { n: 2, lc: 2, text: 'two' },
    ]);
    expect((await loaded(first)).entries).toEqual(entries);
    expect((await loaded(boat.open())).entries).toEqual(entries);
  });

  it.skipIf(windows)('keeps its log to its owner: files 0600 in folders 0700', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    expect(statSync(boat.log).mode & 0o777).toBe(0o700);
    expect(boat.files().map((file) => statSync(file).mode & 0o777)).toEqual([0o600]);
  });

  it('that is not there, or is not a boat’s, says so and names one that is near', async () => {
    const parent = aFolder();
    aBoatFolder(join(parent, 'whimbrel'));
    expect(await aBoatFolder(join(parent, 'other')).open().read()).toMatchObject({ ok: true });
    rmSync(join(parent, 'other', 'boat.json'));
    const boat = aBoatFolder(join(parent, 'whimbrell'));
    rmSync(boat.folder, { recursive: true });
    expect(await boat.open().read()).toEqual({
      ok: false,
      troubles: [{ kind: 'no boat folder', folder: boat.folder, near: join(parent, 'whimbrel') }],
    });
    expect(await aBoatFolder(parent).open().read()).toMatchObject({ ok: true });
    rmSync(join(parent, 'boat.json'));
    const above = aBoatFolder(parent);
    rmSync(join(parent, 'boat.json'));
    expect(await above.open().read()).toMatchObject({ troubles: [{ near: join(parent, 'whimbrel') }] });
  });

  it('with a boat file that cannot be used is not read further', async () => {
    const boat = aBoatFolder();
    writeFileSync(join(boat.folder, 'boat.json'), '{');
    expect(await boat.open().read()).toMatchObject({ ok: false, troubles: [{ kind: 'not json' }] });
  });

  it('takes in what another program adds without reading the rest again', async () => {
    const boat = aBoatFolder();
    const [here, there] = [boat.open(), boat.open()];
    await saved(here, aRemark('here'));
    expect(await textsIn(there)).toEqual(['here']);
    await saved(there, aRemark('there'));
    await saved(here, aRemark('here again'));
    expect((await loaded(there)).entries.map(({ n, lc }) => [n, lc])).toEqual([
      [1, 1],
      [2, 2],
      [3, 3],
    ]);
  });

  it('sees a file that was replaced by another, longer or shorter', async () => {
    const boat = aBoatFolder();
    const laptop = aLaptop('abcdefgh');
    for (const text of ['a', 'b', 'c']) laptop.write(aRemark(text));
    mkdirSync(boat.log);
    const file = join(boat.log, 'abcdefgh.ndjson');
    writeFileSync(file, Buffer.concat(laptop.bytes));
    const open = boat.open();
    expect(await textsIn(open)).toEqual(['a', 'b', 'c']);
    writeFileSync(`${file}.new`, Buffer.concat(laptop.bytes.slice(0, 2)));
    rmSync(file);
    writeFileSync(file, Buffer.concat(laptop.bytes.slice(0, 2)));
    expect(await textsIn(open)).toEqual(['a', 'b']);
  });

  it('goes on from the highest count of all laptops', async () => {
    const boat = aBoatFolder();
    const laptop = aLaptop('abcdefgh');
    for (let i = 0; i < 5; i += 1) laptop.write(aRemark('theirs'));
    mkdirSync(boat.log);
    writeFileSync(join(boat.log, 'abcdefgh.ndjson'), Buffer.concat(laptop.bytes));
    expect(await saved(boat.open(), aRemark('ours'))).toMatchObject([{ n: 1, lc: 6 }]);
  });

  it('saves an entry of one key once, however often it is given', async () => {
    const boat = aBoatFolder();
    const page = { ...aRemark('page'), key: 'page 1' };
    const open = boat.open();
    expect(await saved(open, page, page)).toHaveLength(1);
    const size = bytesOf(boat.files()[0]!).length;
    expect(await saved(open, page)).toEqual([]);
    expect(await saved(boat.open(), page)).toEqual([]);
    expect(bytesOf(boat.files()[0]!)).toHaveLength(size);
  });

  it('saves none of several entries when one of them cannot be', async () => {
    const boat = aBoatFolder();
    const result = await boat.open().append([aRemark('good'), { ...aRemark('bad'), at: 'noon' }]);
    expect(result).toMatchObject({ ok: false, troubles: [{ kind: 'wrong entry', field: 'at' }] });
    expect(readdirSync(boat.folder)).toEqual(['boat.json']);
  });

  it('says of an entry longer than a line may be that it is not saved, and what would be', async () => {
    const boat = aBoatFolder();
    const long = '\u0007'.repeat(2000);
    const draft = {
      kind: 'use',
      at: '2026-02-03T07:42:00Z',
      spare: 'bell',
      count: 1,
      for: long,
      text: long,
    } as const;
    expect(await boat.open().append([draft])).toMatchObject({
      ok: false,
      troubles: [{ kind: 'wrong entry', expected: 'an entry of at most 16384 bytes' }],
    });
    expect((await loaded(boat.open())).entries).toEqual([]);
  });

  it('begins a new file at 8 MB, and goes on with the numbers', async () => {
    const boat = aBoatFolder();
    const open = boat.open();
    const long = 'x'.repeat(2000);
    await saved(open, ...Array.from({ length: 4200 }, () => aRemark(long)));
    await saved(open, aRemark('in the next'));
    await saved(boat.open(), aRemark('in the next too'));
    const [first, second, ...more] = boat.files();
    expect(more).toEqual([]);
    expect(basename(second!)).toBe(basename(first!).replace('.ndjson', '-0002.ndjson'));
    expect(bytesOf(second!).toString()).toMatch(
      /^\{"v":1,"id":"\w{8}-4201".*\n\{"v":1,"id":"\w{8}-4202".*\n$/,
    );
    expect((await loaded(boat.open())).troubles).toEqual([]);
  });

  it('tells a file in log/ that is not named as one, and does not read it', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const copy = 'log (copy of Ann).ndjson';
    writeFileSync(join(boat.log, copy), bytesOf(boat.files()[0]!));
    writeFileSync(join(boat.log, 'notes.txt'), '');
    expect((await loaded(boat.open())).troubles).toEqual([{ kind: 'stray file', file: `log/${copy}` }]);
  });

  it.skipIf(windows)(
    'follows no symlink and waits on no pipe: not for the boat, not for the log, not in the log',
    async () => {
      const boat = aBoatFolder();
      await saved(boat.open(), aRemark('one'));
      const secret = join(aFolder(), 'secret');
      writeFileSync(secret, 'a secret\n');
      symlinkSync(secret, join(boat.log, 'abcdefgh.ndjson'));
      execFileSync('sh', ['-c', 'mkfifo "$0"', join(boat.log, 'abcdefgj.ndjson')]);
      expect((await loaded(boat.open())).troubles).toEqual([
        { kind: 'not a plain file', file: 'log/abcdefgh.ndjson' },
        { kind: 'not a plain file', file: 'log/abcdefgj.ndjson' },
      ]);
      const linked = aBoatFolder();
      symlinkSync(dirname(secret), linked.log);
      expect((await loaded(linked.open())).troubles).toEqual([{ kind: 'not a plain file', file: 'log' }]);
      expect(await linked.open().append([aRemark('into another folder')])).toMatchObject({ ok: false });
      expect(readdirSync(dirname(secret))).toEqual(['secret']);
      rmSync(join(boat.folder, 'boat.json'));
      symlinkSync(secret, join(boat.folder, 'boat.json'));
      expect(await boat.open().read()).toMatchObject({ ok: false, troubles: [{ kind: 'not a plain file' }] });
    },
  );

  it('refuses a log file over 256 MB without reading it', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const huge = join(boat.log, 'abcdefgh.ndjson');
    writeFileSync(huge, '');
    truncateSync(huge, 256 * 1024 * 1024 + 1);
    const { troubles, entries } = await loaded(boat.open());
    expect(entries).toHaveLength(1);
    expect(troubles).toMatchObject([{ kind: 'file too large', file: 'log/abcdefgh.ndjson' }]);
  });

  it('keeps its marks and locks outside, and nothing else there', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    const writer = basename(boat.files()[0]!, '.ndjson');
    expect(readdirSync(boat.state).sort()).toEqual(
      [`${writer}.lock`, `${writer}.mark`, 'new-writer.lock'].sort(),
    );
    const mark = bytesOf(join(boat.state, `${writer}.mark`));
    await saved(boat.open(), ...Array.from({ length: 50 }, () => aRemark('more')));
    expect(bytesOf(join(boat.state, `${writer}.mark`))).toHaveLength(mark.length);
  });

  it('is watched: a change of the log on the disk is called back', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('one'));
    await new Promise<void>((done) => {
      const stop = boat.open().watch(() => {
        stop();
        done();
      });
      appendFileSync(boat.files()[0]!, 'x');
    });
  });
});
