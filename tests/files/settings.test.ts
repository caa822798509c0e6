import { chmodSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { settingsIn } from '../../source/files/settings.ts';
import { aFolder } from '../helpers/a-boat-folder.ts';

const all = (folder: string) => {
  const { lastBoat, name, palette } = settingsIn(realDisk, folder);
  return { lastBoat, name, palette };
};
const nothing = { lastBoat: null, name: null, palette: 'day' };

describe('the preferences of a person', () => {
  it('are what was last set, from run to run; nothing is written before something is set', () => {
    const folder = join(aFolder(), 'not there yet');
    expect(all(folder)).toEqual(nothing);
    const settings = settingsIn(realDisk, folder);
    settings.set({ name: 'Ann' });
    settings.set({ palette: 'night', lastBoat: '/boats/whimbrel' });
    expect(settings.name).toBe('Ann');
    expect(all(folder)).toEqual({ lastBoat: '/boats/whimbrel', name: 'Ann', palette: 'night' });
    expect(readdirSync(folder)).toEqual(['preferences.json']);
  });

  it('set from two windows are both kept, and so is what a later version wrote', () => {
    const folder = aFolder();
    writeFileSync(join(folder, 'preferences.json'), '{"units":"imperial"}');
    const [one, two] = [settingsIn(realDisk, folder), settingsIn(realDisk, folder)];
    expect([one.name, two.name]).toEqual([null, null]);
    one.set({ name: 'Ann' });
    two.set({ palette: 'plain' });
    expect(JSON.parse(readFileSync(join(folder, 'preferences.json'), 'utf8'))).toEqual({
      units: 'imperial',
      name: 'Ann',
      palette: 'plain',
    });
  });

  it.each(['', '{', '[]', 'null', '\0\0\0'])(
    'in a damaged file are set aside, not wiped, and stop nothing: %j',
    (text) => {
      const folder = aFolder();
      const file = join(folder, 'preferences.json');
      for (const aside of ['preferences.damaged.json', 'preferences.damaged-2.json']) {
        writeFileSync(file, text);
        expect(all(folder)).toEqual(nothing);
        expect(readFileSync(join(folder, aside), 'utf8')).toBe(text);
      }
      settingsIn(realDisk, folder).set({ name: 'Ann' });
      expect(all(folder).name).toBe('Ann');
    },
  );

  it('of the wrong kind are as if not set', () => {
    const folder = aFolder();
    writeFileSync(join(folder, 'preferences.json'), '{"name":7,"lastBoat":"","palette":"mauve"}');
    expect(all(folder)).toEqual(nothing);
  });

  it('that cannot be written stop nothing', () => {
    const folder = aFolder();
    writeFileSync(join(folder, 'file'), '');
    const settings = settingsIn(realDisk, join(folder, 'file'));
    settings.set({ name: 'Ann' });
    expect(settings.name).toBe('Ann');
    chmodSync(folder, 0o700);
  });
});
