import { writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Draft } from '../../source/logbook/entries.ts';
import { aBoatFolder, bytesOf, hasty, loaded, saved, textsIn } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';
import { NOW } from '../helpers/an-outside.ts';
import { runOn } from '../helpers/on-disk.ts';

/** A boat with these entries, and her log file then changed by hand. */
async function aBoatWith(drafts: readonly Draft[], change: (text: string) => string) {
  const boat = aBoatFolder();
  for (const draft of drafts) await saved(boat.open({ ...hasty, now: () => NOW }), draft);
  const file = boat.files()[0]!;
  writeFileSync(file, change(bytesOf(file).toString()));
  return { boat, file, name: `log/${basename(file)}`, writer: basename(file, '.ndjson') };
}

const three = [aRemark('one'), aRemark('two'), aRemark('three')];

describe('inspect --accept', () => {
  it('takes a line changed by hand in as a new entry and says so; from then on the log is sound', async () => {
    const { boat, name } = await aBoatWith(three, (text) => text.replace('"two"', '"two, mended"'));
    const before = await runOn(boat, ['inspect']);
    expect(before.status).toBe(65);
    expect(before.out).toContain(`${name}, line 2: the line was changed by hand`);
    const { status, out, err } = await runOn(boat, ['inspect', '--accept']);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(
      new RegExp(
        `^accepted: ${name}, line 2  Two, mended  \\[\\w{8}-\\d\\]\n\n1 line changed by hand, and taken in again since\n   ${name}, line 2: `,
      ),
    );
    expect(out).toContain('3 entries, and 0 struck. What was saved is sound.\n');
    expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['one', 'three', 'two, mended']);
  });

  it('done again takes nothing twice', async () => {
    const { boat } = await aBoatWith(three, (text) => text.replace('"two"', '"2"'));
    await runOn(boat, ['inspect', '--accept']);
    const { status, out } = await runOn(boat, ['inspect', '--accept']);
    expect(status).toBe(0);
    expect(out).toMatch(/^no line waits to be accepted\n/);
    expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['2', 'one', 'three']);
  });

  it('takes the last line too, where what was saved seems to be missing', async () => {
    const { boat } = await aBoatWith(three, (text) => text.replace('"three"', '"3"'));
    expect((await runOn(boat, ['inspect', '--accept'])).status).toBe(0);
    expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['3', 'one', 'two']);
  });

  it('takes every line of a log that came back with other line ends', async () => {
    const { boat, file } = await aBoatWith(three, (text) => text.replaceAll('\n', '\r\n'));
    const bytes = bytesOf(file);
    const { status, out } = await runOn(boat, ['inspect', '--accept']);
    expect(status).toBe(0);
    expect(out.match(/^accepted: /gm)).toHaveLength(3);
    expect(await textsIn(boat.open(hasty))).toEqual(['one', 'two', 'three']);
    expect(bytesOf(file)).toEqual(bytes);
  });

  it('says why a line cannot be accepted, and takes the others', async () => {
    const { boat, name } = await aBoatWith(
      [
        aRemark('one'),
        { kind: 'dip', at: '2026-02-03T07:42:00Z', fluid: 'gear-oil', share: 0.5 },
        aRemark('three'),
        aRemark('four'),
      ],
      (text) =>
        text
          .replace('"one"', '"1"')
          .replace('"share":0.5', '"share":"half"')
          .replace('"three"', '"three","colour":"red"')
          .replace(/"v":1(.*"four")/, '"v":7$1'),
    );
    const { status, out } = await runOn(boat, ['inspect', '--accept']);
    expect(status).toBe(65);
    expect(out).toContain(`accepted: ${name}, line 1  1  [`);
    expect(out).toMatch(new RegExp(`not accepted: ${name}, line 2\nshare is "half"`));
    expect(out).toMatch(new RegExp(`not accepted: ${name}, line 3\ncolour is "red"`));
    expect(out).toMatch(
      new RegExp(`not accepted: ${name}, line 4\nv is 7\n"v" takes the number of a version`),
    );
    expect(await textsIn(boat.open(hasty))).toEqual(['1']);
  });

  it('takes none beside the entry it was changed from, until that is struck: it would count twice', async () => {
    const { boat, writer } = await aBoatWith(three, (text) =>
      text.replace(/^(.*"two".*\n)/m, (line) => line + line.replace('"two"', '"2"')),
    );
    const { out } = await runOn(boat, ['inspect', '--accept']);
    expect(out).toContain(`strike it first, with hoveshort record strike entry=${writer}-2`);
    expect(await textsIn(boat.open(hasty))).toEqual(['one', 'two', 'three']);
    await runOn(boat, ['record', 'strike', `entry=${writer}-2`]);
    expect((await runOn(boat, ['inspect', '--accept'])).status).toBe(0);
    expect((await textsIn(boat.open(hasty))).toSorted()).toEqual(['2', 'one', 'three']);
  });

  it('refuses what would be too long for a line, and takes the others', async () => {
    const bell = '\u0007';
    const long = {
      kind: 'use',
      at: '2026-02-03T07:42:00Z',
      spare: 'bell',
      count: 1,
      for: bell.repeat(2000),
      text: bell.repeat(680),
    } as const;
    const { boat } = await aBoatWith([long, aRemark('two')], (text) =>
      text.replace('"count":1', '"count":2').replace('"two"', '"2"'),
    );
    const { status, out } = await runOn(boat, ['inspect', '--accept']);
    expect(status).toBe(65);
    expect(out).toContain('takes an entry of at most 16384 bytes');
    expect(out.match(/^accepted: /gm)).toHaveLength(1);
  });

  it('gives the facts as JSON', async () => {
    const { boat, name } = await aBoatWith(three, (text) =>
      text.replace('"one"', '1').replace('"two"', '"2"'),
    );
    const { out } = await runOn(boat, ['inspect', '--accept', '--json']);
    expect(JSON.parse(out)).toMatchObject({
      sound: false,
      accepted: [{ place: { file: name, line: 2 }, entry: { text: '2' } }],
      refused: [{ place: { file: name, line: 1 }, troubles: [{ kind: 'wrong entry', field: 'text' }] }],
      quiet: [{ kind: 'line edited', place: { line: 2 } }],
    });
  });

  it('lets nothing hostile in a changed line reach the screen', async () => {
    const { boat } = await aBoatWith(three, (text) =>
      text.replace('"two"', '"\u202e\u009b31m"').replace('"three"', '"3","\u202eodd\u0085":1'),
    );
    const { out } = await runOn(boat, ['inspect', '--accept']);
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  });
});

describe('inspect', () => {
  it('shows lines that were never confirmed, and calls the log sound all the same', async () => {
    const { boat, name } = await aBoatWith(three, (text) =>
      text.replace(/(\n.*"three")/, '\n{"v":1,"id":"k7m2q$1'),
    );
    const { status, out } = await runOn(boat, ['inspect']);
    expect(status).toBe(0);
    expect(out).toBe(
      `1 line never confirmed, so nothing is missing by them: the entry after each was saved without it\n   ${name}, line 3: {"v":1,"id":"k7m2q\n\n3 entries, and 0 struck. What was saved is sound.\n`,
    );
    expect((await loaded(boat.open(hasty))).troubles).toEqual([]);
  });
});
