import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { aBoatFolder, bytesOf, hasty, saved, textsIn } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

describe('taking in lines changed by hand', () => {
  it('on a full disk says that nothing was saved; with room again it takes them', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('one'), aRemark('two'));
    const file = boat.files()[0]!;
    writeFileSync(file, bytesOf(file).toString().replace('"one"', '"one, mended"'));
    const write = () => {
      throw Object.assign(new Error('no room'), { code: 'ENOSPC' });
    };
    const full = boat.open({ ...hasty, disk: { ...realDisk, ...hasty.disk, write } });
    expect(await full.accept()).toMatchObject({
      ok: false,
      troubles: [{ kind: 'not saved', code: 'ENOSPC', text: expect.stringContaining('one, mended') }],
    });
    expect(await textsIn(boat.open(hasty))).toEqual(['two']);
    expect(await boat.open(hasty).accept()).toMatchObject({ ok: true, value: { taken: [{}], refused: [] } });
    expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['one, mended', 'two']);
  });
});
