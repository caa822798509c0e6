import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { mostLeap } from '../../source/logbook/counts.ts';
import { mostCount, writeLine } from '../../source/logbook/line.ts';
import { aBoatFolder, hasty, loaded, saved } from '../helpers/a-boat-folder.ts';
import { aRemark, crcOf } from '../helpers/a-laptop.ts';

/** A boat whose other laptop has written these counts. */
function aBoatWithCounts(v: number, ...counts: number[]) {
  const boat = aBoatFolder();
  mkdirSync(boat.log);
  let p = '00000000';
  const lines = counts.map((lc, i) => {
    const at = '2026-02-03T07:42:00Z';
    const record = { v, id: `k7m2q9xd-${i + 1}`, p, lc, at, rec: at, kind: 'remark', text: 'fog' };
    const { bytes, crc } = writeLine(record, crcOf);
    p = crc;
    return bytes;
  });
  writeFileSync(join(boat.log, 'k7m2q9xd.ndjson'), Buffer.concat(lines));
  return boat;
}

describe('the count of an entry saved', () => {
  it('goes on from the highest that another laptop has written', async () => {
    expect(await saved(aBoatWithCounts(1, 3, 9).open(hasty), aRemark('ours'))).toMatchObject([{ lc: 10 }]);
  });

  it('goes on from what was read before, while the disk fails to read it again', async () => {
    const boat = aBoatWithCounts(1, 3, 9);
    let fails = false;
    const list: typeof realDisk.list = (folder) => {
      if (fails && folder === boat.log) throw Object.assign(new Error('EIO'), { code: 'EIO' });
      return realDisk.list(folder);
    };
    const open = boat.open({ ...hasty, disk: { ...realDisk, ...hasty.disk, list } });
    await loaded(open);
    fails = true;
    expect(await saved(open, aRemark('ours'))).toMatchObject([{ lc: 10 }]);
  });

  it('goes on from a line of a version to come too', async () => {
    expect(await saved(aBoatWithCounts(2, 3, 9).open(hasty), aRemark('ours'))).toMatchObject([{ lc: 10 }]);
  });

  it('follows a long log by steps, also where the higher step is read first', async () => {
    const open = aBoatWithCounts(1, 2 * mostLeap, mostLeap).open(hasty);
    expect(await saved(open, aRemark('ours'))).toMatchObject([{ lc: 2 * mostLeap + 1 }]);
  });

  it('does not follow a leap, which is told', async () => {
    const open = aBoatWithCounts(1, 3, mostCount, 4).open(hasty);
    expect(await saved(open, aRemark('ours'))).toMatchObject([{ lc: 5 }]);
    expect((await loaded(open)).troubles).toContainEqual({
      kind: 'count leap',
      place: { file: 'log/k7m2q9xd.ndjson', line: 2 },
      lc: mostCount,
    });
  });
});
