import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import {
  aBoatFolder,
  aFolder,
  type BoatOnDisk,
  bytesOf,
  hasty,
  saved,
  textsIn,
} from '../helpers/a-boat-folder.ts';
import { aBoatText } from '../helpers/a-boat-text.ts';
import { aRemark } from '../helpers/a-laptop.ts';

/** A boat with two entries, a forecast and a table of the owner's, and an empty stick. */
async function aboard(): Promise<{ boat: BoatOnDisk; stick: string; copy: string }> {
  const boat = aBoatFolder(join(aFolder(), 'whimbrel'));
  await saved(boat.open(hasty), aRemark('one'), aRemark('two'));
  for (const [folder, name] of [
    ['forecasts', '20260203T0600Z-aaaaaaaa.json'],
    ['tracing', 'clues.json'],
  ] as const) {
    mkdirSync(join(boat.folder, folder));
    writeFileSync(join(boat.folder, folder, name), `${name}\n`);
  }
  const stick = aFolder();
  return { boat, stick, copy: join(stick, 'whimbrel') };
}

function filesIn(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(join(folder, name)).isFile(),
  );
  return Object.fromEntries(names.sort().map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
}

async function copied(boat: BoatOnDisk, place: string, change = hasty) {
  const made = await boat.open(change).copyTo(place);
  if (!made.ok) throw new Error(JSON.stringify(made.troubles));
  return made.value;
}

describe('a copy of the boat folder', () => {
  it('is the same files under the same name, and a boat of its own', async () => {
    const { boat, stick, copy } = await aboard();
    expect(await copied(boat, stick, {})).toMatchObject({ to: copy, entries: 2, more: 0 });
    expect(filesIn(copy)).toEqual(filesIn(boat.folder));
    expect(await textsIn(aBoatFolder(copy).open(hasty))).toEqual(['one', 'two']);
  });

  it.skipIf(process.platform === 'win32')('is for its owner alone: 0600 in 0700', async () => {
    const { boat, stick, copy } = await aboard();
    await copied(boat, stick);
    expect(statSync(copy).mode & 0o777).toBe(0o700);
    for (const name of Object.keys(filesIn(copy)))
      expect(statSync(join(copy, name)).mode & 0o777, name).toBe(0o600);
  });

  it('made again takes what is new, keeps the boat file before it, and leaves no other file behind', async () => {
    const { boat, stick, copy } = await aboard();
    await copied(boat, stick);
    await saved(boat.open(hasty), aRemark('three'));
    const changed = aBoatText.replace('"crew":2', '"crew":3');
    expect(changed).not.toBe(aBoatText);
    writeFileSync(join(boat.folder, 'boat.json'), changed);
    expect(await copied(boat, stick)).toMatchObject({ entries: 3 });
    expect(filesIn(copy)).toEqual({ ...filesIn(boat.folder), 'boat.json.bak': aBoatText });
  });

  it('keeps what is there and not here, and says so', async () => {
    const { boat, stick, copy } = await aboard();
    await copied(boat, stick);
    const before = filesIn(copy);
    rmSync(boat.log, { recursive: true });
    expect(await copied(boat, stick)).toMatchObject({ entries: 0, more: 2 });
    expect(filesIn(copy)).toEqual(before);
  });

  it('mends what went bad there: the lines of both are kept, and what is missing is put back', async () => {
    const { boat, stick, copy } = await aboard();
    await copied(boat, stick);
    const file = join(copy, 'log', basename(boat.files()[0]!));
    writeFileSync(file, bytesOf(file).subarray(0, 40));
    await copied(boat, stick);
    expect(bytesOf(file)).toEqual(bytesOf(boat.files()[0]!));
  });

  it('that was found damaged when read again is not called checked', async () => {
    const { boat, stick, copy } = await aboard();
    await copied(boat, stick);
    const file = join(copy, 'log', basename(boat.files()[0]!));
    const bytes = bytesOf(file);
    bytes[20] = (bytes[20] as number) ^ 1;
    writeFileSync(file, bytes);
    expect(await boat.open(hasty).copyTo(stick)).toMatchObject({
      ok: false,
      troubles: [{ kind: 'copy unsound', folder: copy, lacks: 0 }, { kind: 'line edited' }],
    });
    expect((await textsIn(aBoatFolder(copy).open(hasty))).toSorted()).toEqual(['one', 'two']);
  });

  it('does not take a boat file that cannot be used, but all the rest', async () => {
    const { boat, stick, copy } = await aboard();
    await copied(boat, stick);
    await saved(boat.open(hasty), aRemark('three'));
    writeFileSync(join(boat.folder, 'boat.json'), '{"name":');
    expect(await boat.open(hasty).copyTo(stick)).toMatchObject({
      ok: false,
      troubles: [{ kind: 'not copied', to: copy, code: null }, { kind: 'not json' }],
    });
    expect(await textsIn(aBoatFolder(copy).open(hasty))).toEqual(['one', 'two', 'three']);
  });
});

describe('a place for a copy', () => {
  it('that is not there is not made', async () => {
    const { boat, stick } = await aboard();
    const place = join(stick, 'not in');
    expect(await boat.open(hasty).copyTo(place)).toEqual({
      ok: false,
      troubles: [{ kind: 'not copied', to: place, code: 'ENOENT' }],
    });
    expect(existsSync(place)).toBe(false);
  });

  it('that is a file, or not given from the root, is refused', async () => {
    const { boat, stick } = await aboard();
    writeFileSync(join(stick, 'file'), '');
    expect(await boat.open(hasty).copyTo(join(stick, 'file'))).toMatchObject({
      troubles: [{ code: 'ENOTDIR' }],
    });
    expect(await boat.open(hasty).copyTo('stick')).toMatchObject({
      troubles: [{ why: 'not from the root' }],
    });
  });

  it.each([
    ['the boat folder', (boat: string) => boat],
    ['the folder it stands in', (boat: string) => join(boat, '..')],
    ['a folder in it', (boat: string) => join(boat, 'log')],
    [
      'a link into it',
      (boat: string, other: string) => {
        symlinkSync(join(boat, 'log'), join(other, 'link'));
        return join(other, 'link');
      },
    ],
  ])('that is %s is refused, and nothing is written', async (_, placeOf) => {
    const { boat, stick } = await aboard();
    const before = filesIn(boat.folder);
    expect(await boat.open(hasty).copyTo(placeOf(boat.folder, stick))).toMatchObject({
      ok: false,
      troubles: [{ kind: 'no place for a copy', why: 'the boat folder itself' }],
    });
    expect(filesIn(boat.folder)).toEqual(before);
  });

  it.each([
    ['another boat', 'boat.json', aBoatText.replace('Whimbrel', 'Godwit')],
    ['no boat', 'photographs.zip', 'PK'],
  ])('where %s stands under the name of the boat folder is refused', async (_, name, text) => {
    const { boat, stick, copy } = await aboard();
    mkdirSync(copy);
    writeFileSync(join(copy, name), text);
    expect(await boat.open(hasty).copyTo(stick)).toMatchObject({ troubles: [{ why: 'taken' }] });
    expect(filesIn(copy)).toEqual({ [name]: text });
  });

  it('where the copy has gone on as the boat did, under another name now, is taken', async () => {
    const { boat, stick } = await aboard();
    await copied(boat, stick);
    writeFileSync(join(boat.folder, 'boat.json'), aBoatText.replace('Whimbrel', 'Curlew'));
    expect(await copied(boat, stick)).toMatchObject({ entries: 2 });
  });
});

describe('a copy broken off', () => {
  it('on a full stick, whichever call says so, has all it had, and no leftover; with room again it is made whole', async () => {
    for (let at = 1; ; at += 1) {
      const { boat, stick, copy } = await aboard();
      await copied(boat, stick);
      const before = filesIn(copy);
      await saved(boat.open(hasty), aRemark('three'));
      writeFileSync(join(boat.folder, 'boat.json'), aBoatText.replace('"crew":2', '"crew":3'));
      writeFileSync(join(boat.folder, 'tracing', 'more.json'), '{}');
      let writes = 0;
      const write: typeof realDisk.write = (file, bytes, position) => {
        writes += 1;
        if (writes < at) return realDisk.write(file, bytes, position);
        if (writes === at) realDisk.write(file, bytes.subarray(0, bytes.length >> 1), position);
        throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      };
      const made = await boat
        .open({ ...hasty, disk: { ...(hasty.disk as typeof realDisk), write } })
        .copyTo(stick);
      if (made.ok) {
        expect(at).toBeGreaterThan(3);
        return;
      }
      expect(made.troubles).toContainEqual({ kind: 'not copied', to: copy, code: null });
      const after = filesIn(copy);
      for (const [name, text] of Object.entries(before))
        expect(after[name]?.startsWith(text) || after[`${name}.bak`] === text, `${name} at ${at}`).toBe(true);
      expect(Object.keys(after).filter((name) => name.endsWith('.new'))).toEqual([]);
      await copied(boat, stick);
      expect(filesIn(copy)).toMatchObject(filesIn(boat.folder));
    }
  });
});
