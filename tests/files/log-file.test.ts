import { mkdirSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { aBoatFolder, hasty, loaded, saved } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

describe('a log file whose place is taken between the look at it and its opening', () => {
  it.each([
    [
      'by a symlink is not followed',
      (file: string) => {
        renameSync(file, `${file}.away`);
        symlinkSync(`${file}.away`, file);
      },
    ],
    [
      'by a folder is not read',
      (file: string) => {
        rmSync(file);
        mkdirSync(file);
      },
    ],
  ])('%s, and it is told', async (_, take) => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('one'));
    const file = boat.files()[0]!;
    let taken = false;
    const open: typeof realDisk.open = (path, opening) => {
      if (path === file && !taken) {
        taken = true;
        take(file);
      }
      return realDisk.open(path, opening);
    };
    const { entries, troubles } = await loaded(
      boat.open({ ...hasty, disk: { ...realDisk, ...hasty.disk, open } }),
    );
    expect(entries).toEqual([]);
    expect(troubles).toContainEqual({ kind: 'not a plain file', file: `log/${basename(file)}` });
  });
});
