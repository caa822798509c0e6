import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { settingsIn } from '../../source/files/settings.ts';
import { aFolder } from '../helpers/a-boat-folder.ts';

const windows = process.platform === 'win32';
const all = async (folder: string) => {
  const { lastBoat, name, palette } = await settingsIn(folder)();
  return { lastBoat, name, palette };
};
const nothing = { lastBoat: null, name: null, palette: 'day' };

describe('the preferences of a person', () => {
  it('are what was last set, from run to run; nothing is written before something is set', async () => {
    const folder = join(aFolder(), 'not there yet');
    expect(await all(folder)).toEqual(nothing);
    expect(readdirSync(join(folder, '..'))).toEqual([]);
    const settings = await settingsIn(folder)();
    await settings.set({ name: 'Ann' });
    await settings.set({ palette: 'night', lastBoat: '/boats/whimbrel' });
    expect(settings.name).toBe('Ann');
    expect(await all(folder)).toEqual({ lastBoat: '/boats/whimbrel', name: 'Ann', palette: 'night' });
    expect(readdirSync(folder)).toEqual(['preferences.json']);
  });

  it('hold the second place for copies, and when the last ones were made; what is no such record is as if not there', async () => {
    const folder = aFolder();
    const made = { boat: '/boats/whimbrel', place: '/stick', at: '2026-02-03T07:40:00.000Z' };
    await (await settingsIn(folder)()).set({ backup: '/stick', checkedCopies: [made] });
    expect(await settingsIn(folder)()).toMatchObject({ backup: '/stick', checkedCopies: [made] });
    await (await settingsIn(folder)()).set({ backup: null });
    expect(await settingsIn(folder)()).toMatchObject({ backup: null, checkedCopies: [made] });
    const odd = [made, 7, null, { ...made, at: 'once' }, { boat: '/boats/whimbrel' }];
    for (const [written, read] of [
      [odd, [made]],
      ['text', []],
    ]) {
      writeFileSync(join(folder, 'preferences.json'), JSON.stringify({ backup: 7, checkedCopies: written }));
      expect(await settingsIn(folder)()).toMatchObject({ backup: null, checkedCopies: read });
    }
  });

  it.skipIf(windows)('are for their owner alone: 0600 in 0700', async () => {
    const folder = join(aFolder(), 'not there yet');
    await (await settingsIn(folder)()).set({ name: 'Ann' });
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(statSync(join(folder, 'preferences.json')).mode & 0o777).toBe(0o600);
  });

  it('set from two windows are both kept, and so is what a later version wrote', async () => {
    const folder = aFolder();
    writeFileSync(join(folder, 'preferences.json'), '{"units":{"depth.of":"m"},"a.b":1}');
    const [one, two] = await Promise.all([settingsIn(folder)(), settingsIn(folder)()]);
    expect([one.name, two.name]).toEqual([null, null]);
    await one.set({ name: 'Ann' });
    await two.set({ palette: 'plain' });
    expect(JSON.parse(readFileSync(join(folder, 'preferences.json'), 'utf8'))).toEqual({
      units: { 'depth.of': 'm' },
      'a.b': 1,
      name: 'Ann',
      palette: 'plain',
    });
  });

  it.each(['', '{', '[]', 'null', '"text"', '\0\0\0', `{"name":"${'x'.repeat(70_000)}"}`])(
    'in a damaged file are set aside, not wiped, and stop nothing: %.20j',
    async (text) => {
      const folder = aFolder();
      const file = join(folder, 'preferences.json');
      for (const aside of ['preferences.damaged.json', 'preferences.damaged-2.json']) {
        writeFileSync(file, text);
        expect(await all(folder)).toEqual(nothing);
        expect(readFileSync(join(folder, aside), 'utf8')).toBe(text);
      }
      const settings = await settingsIn(folder)();
      await settings.set({ name: 'Ann' });
      writeFileSync(file, text);
      await settings.set({ palette: 'night' });
      expect(readFileSync(join(folder, 'preferences.damaged-3.json'), 'utf8')).toBe(text);
      expect(await all(folder)).toMatchObject({ palette: 'night' });
    },
  );

  it('that are a folder or a pipe are set aside too, and not waited for', async () => {
    const folder = aFolder();
    const file = join(folder, 'preferences.json');
    mkdirSync(file);
    expect(await all(folder)).toEqual(nothing);
    if (!windows) execFileSync('mkfifo', [file]);
    expect(await all(folder)).toEqual(nothing);
    await (await settingsIn(folder)()).set({ name: 'Ann' });
    expect(await all(folder)).toMatchObject({ name: 'Ann' });
  });

  it.skipIf(windows)('kept elsewhere behind a link stay there', async () => {
    const [folder, elsewhere] = [aFolder(), aFolder()];
    writeFileSync(join(elsewhere, 'mine.json'), '{"name":"Ann"}');
    symlinkSync(join(elsewhere, 'mine.json'), join(folder, 'preferences.json'));
    await (await settingsIn(folder)()).set({ palette: 'night' });
    expect(JSON.parse(readFileSync(join(elsewhere, 'mine.json'), 'utf8'))).toEqual({
      name: 'Ann',
      palette: 'night',
    });
    expect(readdirSync(folder)).toEqual(['preferences.json']);
  });

  it('of the wrong kind are as if not set', async () => {
    const folder = aFolder();
    writeFileSync(join(folder, 'preferences.json'), '{"name":7,"lastBoat":"","palette":"mauve"}');
    expect(await all(folder)).toEqual(nothing);
  });

  it('that cannot be written stop nothing, and hold while the program runs', async () => {
    const folder = aFolder();
    writeFileSync(join(folder, 'file'), '');
    const settings = await settingsIn(join(folder, 'file'))();
    await settings.set({ name: 'Ann' });
    expect(settings.name).toBe('Ann');
    expect(readdirSync(folder)).toEqual(['file']);
  });

  it.skipIf(process.platform !== 'linux')('with no place to be kept in stop nothing either', async () => {
    const settings = await settingsIn('/proc/nowhere/hoveshort')();
    await settings.set({ name: 'Ann' });
    expect(settings.name).toBe('Ann');
  });
});
