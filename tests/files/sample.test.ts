import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realDisk } from '../../source/files/disk.ts';
import { copySample } from '../../source/files/sample.ts';
import { aBoatFolder, aFolder, loaded } from '../helpers/a-boat-folder.ts';
import { aBoatText } from '../helpers/a-boat-text.ts';
import { aLaptop, aRemark, crcOf } from '../helpers/a-laptop.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const by = { disk: realDisk, crc32: crcOf };
const committed = join(import.meta.dirname, '../../sample-boat');

/** A small boat with all that has dates. */
function aSample() {
  const boat = aBoatFolder();
  const dated = JSON.stringify({
    ...JSON.parse(aBoatText),
    dated: [{ id: 'flares', name: 'Flares', expires: '2026-03-31' }],
  });
  writeFileSync(join(boat.folder, 'boat.json'), dated);
  const laptop = aLaptop('abcdefgh');
  laptop.write(aRemark('one', '2026-02-01T08:00:00Z'), '2026-02-01T08:00:30.500Z');
  const at = '2026-02-03T07:42:00Z';
  laptop.write({
    kind: 'gate',
    at,
    passage: 'out',
    leg: 0,
    from: '2026-02-03T23:30:00Z',
    to: '2026-02-04T02:00:00Z',
  });
  laptop.write({ kind: 'dated', at, item: 'flares', expires: '2028-12-31' });
  mkdirSync(boat.log);
  const [one, ...rest] = laptop.bytes;
  const torn = Buffer.from(
    '{"v":1,"id":"abcdefgh-2","p":"00000000","lc":2,"at":"2026-02-02T08:00:00Z","re\n',
  );
  writeFileSync(join(boat.log, 'abcdefgh.ndjson'), Buffer.concat([one!, torn, ...rest]));
  mkdirSync(join(boat.folder, 'forecasts'));
  const forecast = steadyForecast(Date.parse('2026-02-03T06:00:00Z'), [{ hours: 12 }]);
  writeFileSync(join(boat.folder, 'forecasts', '20260203T0600Z-1a2b3c4d.json'), JSON.stringify(forecast));
  return boat;
}

function copyAt(from: string, now: string) {
  const to = join(aFolder(), 'copy');
  expect(copySample(by, { from, to, nowMs: Date.parse(now) })).toEqual({ ok: true, value: to });
  return aBoatFolderAt(to);
}

function aBoatFolderAt(folder: string) {
  const text = readFileSync(join(folder, 'boat.json'));
  const boat = aBoatFolder(folder);
  writeFileSync(join(folder, 'boat.json'), text);
  return boat;
}

describe('a copy of the sample boat', () => {
  it('has every date moved by the same whole days, so that the last entry is this morning', async () => {
    const copy = copyAt(aSample().folder, '2031-07-09T20:15:00Z');
    const { entries, boat, troubles, forecasts } = await loaded(copy.open());
    expect(entries).toMatchObject([
      { at: '2031-07-07T08:00:00Z', rec: '2031-07-07T08:00:30.500Z' },
      { at: '2031-07-09T07:42:00Z', from: '2031-07-09T23:30:00Z', to: '2031-07-10T02:00:00Z' },
      { at: '2031-07-09T07:42:00Z', expires: '2034-06-05' },
    ]);
    expect(boat.dated[0]?.expires).toBe('2031-09-03');
    expect(troubles).toEqual([]);
    expect(readdirSync(join(copy.folder, 'forecasts'))).toEqual(['20310709T0600Z-1a2b3c4d.json']);
    expect(forecasts).toEqual([steadyForecast(Date.parse('2031-07-09T06:00:00Z'), [{ hours: 12 }])]);
  });

  it('never has an entry in the future: before that hour of the day, its last morning was yesterday', async () => {
    const copy = copyAt(aSample().folder, '2031-07-09T05:00:00Z');
    expect((await loaded(copy.open())).entries.at(-1)?.at).toBe('2031-07-08T07:42:00Z');
  });

  it('can also be moved back', async () => {
    const copy = copyAt(aSample().folder, '2024-02-29T20:00:00Z');
    expect((await loaded(copy.open())).entries.at(-1)?.at).toBe('2024-02-29T07:42:00Z');
  });

  it('keeps the line that a power cut tore', () => {
    const copy = copyAt(aSample().folder, '2026-02-04T20:00:00Z');
    const lines = readFileSync(join(copy.log, 'abcdefgh.ndjson'), 'utf8').split('\n');
    expect(lines[1]).toBe('{"v":1,"id":"abcdefgh-2","p":"00000000","lc":2,"at":"2026-02-03T08:00:00Z","re');
  });

  it('of the boat that is delivered reads cleanly, and has as many entries as the boat herself', async () => {
    const itself = await loaded(aBoatFolder(aFolder()).open({ boat: committed }));
    const copied = await loaded(copyAt(committed, '2030-01-01T12:00:00Z').open());
    expect(copied.troubles).toEqual([]);
    expect(copied.entries).toHaveLength(itself.entries.length);
    expect(copied.entries.length).toBeGreaterThan(300);
    expect(copied.struck).toHaveLength(itself.struck.length);
  });

  it('is not made over something that is there, nor from something that is not', () => {
    const there = aFolder();
    writeFileSync(join(there, 'mine'), '');
    const { folder } = aSample();
    expect(copySample(by, { from: folder, to: there, nowMs: 0 })).toMatchObject({
      troubles: [{ kind: 'folder not empty' }],
    });
    expect(copySample(by, { from: join(there, 'not'), to: join(there, 'x'), nowMs: 0 })).toMatchObject({
      ok: false,
      troubles: [{ kind: 'cannot read', code: 'ENOENT' }],
    });
  });
});
