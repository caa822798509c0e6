import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { answerFor } from '../../source/commands/answer-for.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { stream } from '../../source/maths/stream.ts';
import type { LoadedBoat } from '../../source/outside.ts';
import type { Result } from '../../source/trouble.ts';
import {
  aBoatFolder,
  aFolder,
  type BoatOnDisk,
  bytesOf,
  hasty,
  loaded,
  saved,
  textsIn,
} from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

/** A copy of the folder as it is now, on another laptop. */
function aCopyOf(boat: BoatOnDisk, state = aFolder()): BoatOnDisk {
  const copy = aBoatFolder(join(aFolder(), 'copy'), state);
  cpSync(boat.folder, copy.folder, { recursive: true });
  return copy;
}

async function merged(into: BoatOnDisk, from: BoatOnDisk) {
  return sound(await into.open(hasty).merge(from.folder, false));
}

function sound<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.troubles));
  return result.value;
}

function logOf(boat: BoatOnDisk): Record<string, string> {
  return Object.fromEntries(boat.files().map((file) => [basename(file), bytesOf(file).toString()]));
}

describe('merging a copy of the boat folder', () => {
  it('takes the other laptop’s file, and changes nothing over there', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('together'));
    const copy = aCopyOf(boat);
    await saved(copy.open(hasty), aRemark('theirs'));
    await saved(boat.open(hasty), aRemark('ours'));
    const before = logOf(copy);
    const { files, troubles } = await merged(boat, copy);
    expect(files.map(({ how }) => how).toSorted()).toEqual(['new', 'ours longer']);
    expect(troubles).toEqual([]);
    expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['ours', 'theirs', 'together']);
    expect(logOf(copy)).toEqual(before);
  });

  it('done again changes nothing', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('together'));
    const copy = aCopyOf(boat);
    await saved(copy.open(hasty), aRemark('theirs'));
    await merged(boat, copy);
    const before = logOf(boat);
    expect((await merged(boat, copy)).files.map(({ how }) => how)).toEqual(['same', 'same']);
    expect(logOf(boat)).toEqual(before);
  });

  it('brings back what an older copy had lost, and the laptop goes on under its old writer id', async () => {
    const boat = aBoatFolder();
    const [first] = await saved(boat.open(hasty), aRemark('one'));
    const old = aCopyOf(boat, boat.state);
    await saved(boat.open(hasty), aRemark('two'));
    expect((await loaded(old.open(hasty))).troubles).toMatchObject([
      { kind: 'lines missing', why: 'older copy' },
    ]);
    expect((await merged(old, boat)).files).toMatchObject([{ how: 'longer' }]);
    expect((await loaded(old.open(hasty))).troubles).toEqual([]);
    expect(await saved(old.open(hasty), aRemark('three'))).toMatchObject([{ writer: first!.writer, n: 3 }]);
  });

  it('goes on appending to a file that a merge has put in place meanwhile', async () => {
    const boat = aBoatFolder();
    const open = boat.open();
    await saved(open, aRemark('one'));
    const ahead = aCopyOf(boat, boat.state);
    await saved(ahead.open(), aRemark('two'));
    sound(await boat.open().merge(ahead.folder, false));
    expect(await saved(open, aRemark('three'))).toMatchObject([{ n: 3 }]);
    expect(await textsIn(boat.open())).toEqual(['one', 'two', 'three']);
  });

  it('keeps both ways a cloned laptop went, and says so', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('together'));
    const cloned = aCopyOf(boat, aFolder());
    cpSync(boat.state, cloned.state, { recursive: true });
    await saved(boat.open(hasty), aRemark('one'), aRemark('one more'));
    await saved(cloned.open(hasty), aRemark('other'));
    expect((await merged(boat, cloned)).files).toMatchObject([{ how: 'united' }]);
    await merged(cloned, boat);
    expect(logOf(boat)).toEqual(logOf(cloned));
    const { entries, troubles } = await loaded(boat.open(hasty));
    expect(entries).toHaveLength(4);
    expect(troubles).toMatchObject([{ kind: 'same id twice' }]);
  });

  it('copies the forecasts that are missing here, and never touches a boat file that differs', async () => {
    const boat = aBoatFolder();
    const copy = aCopyOf(boat);
    for (const { folder } of [boat, copy]) mkdirSync(join(folder, 'forecasts'));
    const put = (one: BoatOnDisk, name: string, text: string) =>
      writeFileSync(join(one.folder, 'forecasts', name), text);
    put(boat, '20260203T0600Z-aaaaaaaa.json', 'ours');
    put(copy, '20260203T0600Z-aaaaaaaa.json', 'theirs');
    put(copy, '20260203T1200Z-bbbbbbbb.json', 'new');
    put(copy, 'notes.txt', 'no forecast');
    writeFileSync(join(copy.folder, 'boat.json'), '{"name":"Whimbrel","format":99}');
    const ourBoat = readFileSync(join(boat.folder, 'boat.json'), 'utf8');
    expect(await merged(boat, copy)).toMatchObject({
      forecasts: ['20260203T1200Z-bbbbbbbb.json'],
      boatDiffers: true,
    });
    expect(readdirSync(join(boat.folder, 'forecasts'))).toEqual([
      '20260203T0600Z-aaaaaaaa.json',
      '20260203T1200Z-bbbbbbbb.json',
    ]);
    expect(readFileSync(join(boat.folder, 'forecasts', '20260203T0600Z-aaaaaaaa.json'), 'utf8')).toBe('ours');
    expect(readFileSync(join(boat.folder, 'boat.json'), 'utf8')).toBe(ourBoat);
  });

  it('follows no symlink over there, and takes in the rest', async () => {
    const boat = aBoatFolder();
    const copy = aCopyOf(boat);
    await saved(copy.open(hasty), aRemark('theirs'));
    const secret = join(aFolder(), 'secret');
    writeFileSync(secret, 'a secret\n');
    symlinkSync(secret, join(copy.log, 'abcdefgh.ndjson'));
    const { files, troubles } = await merged(boat, copy);
    expect(files).toMatchObject([{ how: 'new' }]);
    expect(troubles).toMatchObject([{ kind: 'not a plain file' }]);
    expect(existsSync(join(boat.log, 'abcdefgh.ndjson'))).toBe(false);
  });

  it('takes in the rest where a forecast over there cannot be read, and complains of it', async () => {
    const boat = aBoatFolder();
    const copy = aCopyOf(boat);
    mkdirSync(join(copy.folder, 'forecasts'));
    const theirs = (name: string) => join(copy.folder, 'forecasts', name);
    symlinkSync(join(copy.folder, 'boat.json'), theirs('20260203T0600Z-aaaaaaaa.json'));
    writeFileSync(theirs('20260203T1200Z-bbbbbbbb.json'), 'new');
    expect(await merged(boat, copy)).toMatchObject({
      forecasts: ['20260203T1200Z-bbbbbbbb.json'],
      troubles: [{ kind: 'not a plain file', file: theirs('20260203T0600Z-aaaaaaaa.json') }],
    });
    expect(readdirSync(join(boat.folder, 'forecasts'))).toEqual(['20260203T1200Z-bbbbbbbb.json']);
  });

  it('says which forecasts it could not put here, and takes the log all the same', async () => {
    const boat = aBoatFolder();
    const copy = aCopyOf(boat);
    await saved(copy.open(hasty), aRemark('theirs'));
    mkdirSync(join(copy.folder, 'forecasts'));
    writeFileSync(join(copy.folder, 'forecasts', '20260203T0600Z-aaaaaaaa.json'), 'theirs');
    const inTheWay = join(boat.folder, 'forecasts');
    writeFileSync(inTheWay, 'a file');
    const { forecasts, troubles } = await merged(boat, copy);
    expect(forecasts).toEqual([]);
    expect(troubles).toMatchObject([
      { kind: 'cannot write', file: inTheWay },
      { kind: 'cannot write', file: join(inTheWay, '20260203T0600Z-aaaaaaaa.json') },
    ]);
    expect(readFileSync(inTheWay, 'utf8')).toBe('a file');
    expect(await textsIn(boat.open(hasty))).toEqual(['theirs']);
  });

  it('without a place for marks and locks is refused, and nothing is taken', async () => {
    const boat = aBoatFolder();
    const copy = aCopyOf(boat);
    await saved(copy.open(hasty), aRemark('theirs'));
    const state = join(aFolder(), 'a file');
    writeFileSync(state, 'in the way');
    expect(await aBoatFolder(boat.folder, state).open(hasty).merge(copy.folder, false)).toMatchObject({
      ok: false,
      troubles: [{ kind: 'cannot write', file: state }],
    });
    expect(await textsIn(boat.open(hasty))).toEqual([]);
  });

  it('into a boat whose own name cannot be read is refused, unless it is said to be the same boat', async () => {
    const boat = aBoatFolder();
    const copy = aCopyOf(boat);
    await saved(copy.open(hasty), aRemark('theirs'));
    writeFileSync(join(boat.folder, 'boat.json'), '{"name":');
    expect(await boat.open(hasty).merge(copy.folder, false)).toEqual({
      ok: false,
      troubles: [{ kind: 'another boat', folder: copy.folder, name: 'Whimbrel', ours: '' }],
    });
    expect(sound(await boat.open(hasty).merge(copy.folder, true)).files).toMatchObject([{ how: 'new' }]);
  });

  it('of a folder that is no boat’s is refused', async () => {
    const folder = aFolder();
    expect(await aBoatFolder().open(hasty).merge(folder, false)).toEqual({
      ok: false,
      troubles: [{ kind: 'no boat folder', folder }],
    });
  });
});

describe('merging another boat’s folder', () => {
  it.each([
    ['by another name', '{"name":"Godwit"}', 'Godwit'],
    ['without a name that can be read', '{"name":', null],
    ['whose boat file is a number', '7', null],
    ['whose name is a number', '{"name":7}', null],
  ])(
    '%s is refused, and nothing is changed, unless it is said to be the same boat',
    async (_, text, name) => {
      const boat = aBoatFolder();
      await saved(boat.open(hasty), aRemark('ours'));
      const copy = aCopyOf(boat);
      await saved(copy.open(hasty), aRemark('theirs'));
      writeFileSync(join(copy.folder, 'boat.json'), text);
      const before = logOf(boat);
      expect(await boat.open(hasty).merge(copy.folder, false)).toEqual({
        ok: false,
        troubles: [{ kind: 'another boat', folder: copy.folder, name, ours: 'Whimbrel' }],
      });
      expect(logOf(boat)).toEqual(before);
      expect(sound(await boat.open(hasty).merge(copy.folder, true)).boatDiffers).toBe(true);
      expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['ours', 'theirs']);
    },
  );
});

describe('whether the other copy lacks something', () => {
  it('is known: it does while an entry or a forecast is here alone', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('together'));
    const copy = aCopyOf(boat);
    expect((await merged(boat, copy)).theyLack).toBe(false);
    await saved(boat.open(hasty), aRemark('ours'));
    expect((await merged(boat, copy)).theyLack).toBe(true);
    expect((await merged(copy, boat)).theyLack).toBe(false);
    expect((await merged(boat, copy)).theyLack).toBe(false);
    mkdirSync(join(boat.folder, 'forecasts'));
    writeFileSync(join(boat.folder, 'forecasts', '20260203T0600Z-aaaaaaaa.json'), 'ours');
    expect((await merged(boat, copy)).theyLack).toBe(true);
  });
});

describe('a month aboard with two laptops', () => {
  it('merged both ways gives equal bytes and the same log, whichever is merged first', async () => {
    for (const seed of [1, 2, 3]) {
      const one = await aMonth(seed);
      const other = await aMonth(seed);
      await merged(one.a, one.b);
      await merged(one.b, one.a);
      await merged(other.b, other.a);
      await merged(other.a, other.b);
      expect(logOf(one.a)).toEqual(logOf(one.b));
      expect(logOf(other.a)).toEqual(logOf(other.b));
      const [a, b] = await Promise.all([loaded(one.a.open(hasty)), loaded(one.b.open(hasty))]);
      expect(a.entries).toEqual(b.entries);
      if (seed === 1) expect(verdictOf(a)).toEqual(verdictOf(b));
      expect(a.struck).toEqual(b.struck);
      expect(a.troubles).toEqual([]);
      expect(a.struck.length).toBeGreaterThan(0);
      const texts = await textsIn(other.a.open(hasty));
      expect(texts).toEqual(await textsIn(one.a.open(hasty)));
    }
  });
});

/** The whole document, as `verdict --json` gives it. */
function verdictOf(loaded: LoadedBoat) {
  return answerFor(loaded, { at: Date.UTC(2026, 6, 1), seed: 1, simulations: 256 }).document;
}

/** Thirty days of entries and strikes on either laptop by seed, now and then one hearing of the other. */
async function aMonth(seed: number): Promise<{ a: BoatOnDisk; b: BoatOnDisk }> {
  const chance = stream(seed, 'two laptops').uniform;
  const a = aBoatFolder();
  const b = aCopyOf(a);
  for (let day = 1; day <= 30; day += 1) {
    for (const [i, boat] of [a, b].entries()) {
      const open = boat.open({
        ...hasty,
        newWriter: () => `mast000${i + 1}`,
        now: () => Date.UTC(2026, 5, day),
      });
      const at = `2026-06-${String(day).padStart(2, '0')}T08:00:00Z`;
      const { entries } = await loaded(open);
      const earlier = entries[Math.floor(chance() * entries.length)];
      const deed: Draft =
        earlier && chance() < 0.3
          ? { kind: 'strike', at, entry: earlier.id }
          : chance() < 0.5
            ? { kind: 'dip', at, fluid: 'gear-oil', share: Math.floor(chance() * 100) / 100 }
            : aRemark(`day ${day}, laptop ${i}`, at);
      await saved(open, deed);
      if (chance() < 0.15) await merged(boat, boat === a ? b : a);
    }
  }
  return { a, b };
}
