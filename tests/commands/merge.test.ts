import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { aBoatFolder, aFolder, type BoatOnDisk, hasty, saved } from '../helpers/a-boat-folder.ts';
import { aBoatText } from '../helpers/a-boat-text.ts';
import { aRemark } from '../helpers/a-laptop.ts';
import { runOn } from '../helpers/on-disk.ts';

/** A boat's folder and a copy of it on another laptop, each with an entry of its own since. */
async function twoCopies() {
  const boat = aBoatFolder();
  const [together] = await saved(boat.open(hasty), aRemark('together'));
  const copy = aCopyOf(boat);
  await saved(boat.open(hasty), aRemark('ours'));
  const [theirs] = await saved(copy.open(hasty), aRemark('theirs'));
  return { boat, copy, together: together!, theirs: theirs! };
}

function aCopyOf(boat: BoatOnDisk): BoatOnDisk {
  const copy = aBoatFolder(join(aFolder(), 'copy'));
  cpSync(boat.folder, copy.folder, { recursive: true });
  return copy;
}

const logOf = ({ log }: BoatOnDisk) => readdirSync(log).map((name) => readFileSync(join(log, name), 'utf8'));

describe('merge', () => {
  it('says which entries it took, and that the other copy lacks some, with the way back', async () => {
    const { boat, copy, theirs } = await twoCopies();
    expect(await runOn(boat, ['merge', copy.folder])).toEqual({
      status: 0,
      err: '',
      out: `taken in: 1 entry new here
   Tue 3 Feb 2026 07:42  Theirs  [${theirs.id}]

Some of what is here is not over there, where nothing was changed. For the way back: hoveshort merge ${boat.folder} --boat ${copy.folder}
`,
    });
  });

  it('done again says that nothing is new; done both ways, that nothing is wanting', async () => {
    const { boat, copy } = await twoCopies();
    await runOn(boat, ['merge', copy.folder]);
    const before = logOf(boat);
    const again = await runOn(boat, ['merge', copy.folder]);
    expect(again.out).toMatch(/^nothing new: all that is there is here already\n\nSome of what is here/);
    expect((await runOn(copy, ['merge', boat.folder])).out).toContain('Ours');
    expect(await runOn(boat, ['merge', copy.folder])).toEqual({
      status: 0,
      err: '',
      out: 'nothing new: all that is there is here already\n\nNothing that is here is wanting over there.\n',
    });
    expect(logOf(boat)).toEqual(before);
    expect(logOf(copy)).toEqual(before);
  });

  it('says which entries of ours were struck over there', async () => {
    const { boat, copy, together } = await twoCopies();
    await saved(copy.open(hasty), { kind: 'strike', at: '2026-02-03T07:43:00Z', entry: together.id });
    const { out } = await runOn(boat, ['merge', copy.folder]);
    expect(out).toContain('taken in: 2 entries new here\n');
    expect(out).toContain(`struck over there, and so here: 1 entry\n   Tue 3 Feb 2026 07:42  Together`);
  });

  it('says that a cloned laptop’s log went two ways, and that both are kept', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('together'));
    const clone = aBoatFolder(join(aFolder(), 'clone'));
    cpSync(boat.folder, clone.folder, { recursive: true });
    cpSync(boat.state, clone.state, { recursive: true });
    const [ours] = await saved(boat.open(hasty), aRemark('ours'));
    await saved(clone.open(hasty), aRemark('theirs'));
    const { status, out } = await runOn(boat, ['merge', clone.folder]);
    expect(status).toBe(0);
    expect(out).toContain('taken in: 1 entry new here\n   Tue 3 Feb 2026 07:42  Theirs');
    expect(out).toContain('had gone different ways');
    expect(out).toContain(`two lines that differ have the id "${ours!.id}"`);
    expect((await runOn(boat, ['merge', clone.folder])).out).toMatch(/^nothing new/);
  });

  it('takes forecasts that are missing here, leaves a differing boat.json and says so', async () => {
    const { boat, copy } = await twoCopies();
    mkdirSync(join(copy.folder, 'forecasts'));
    writeFileSync(join(copy.folder, 'forecasts', '20260203T0600Z-aaaaaaaa.json'), '{}');
    writeFileSync(join(copy.folder, 'boat.json'), aBoatText.replace('"crew":2', '"crew":3'));
    const { out } = await runOn(boat, ['merge', copy.folder]);
    expect(out).toContain('taken in: 1 forecast\n');
    expect(out).toContain('boat.json differs over there. Ours is left as it is');
    expect(readFileSync(join(boat.folder, 'boat.json'), 'utf8')).toBe(aBoatText);
  });

  it('refuses a boat of another name, with 64, unless --yes', async () => {
    const { boat, copy } = await twoCopies();
    writeFileSync(join(copy.folder, 'boat.json'), aBoatText.replace('Whimbrel', 'Godwit'));
    const before = logOf(boat);
    const { status, out, err } = await runOn(boat, ['merge', copy.folder]);
    expect({ status, out }).toEqual({ status: 64, out: '' });
    expect(err).toContain('is "Godwit", not "Whimbrel"');
    expect(logOf(boat)).toEqual(before);
    expect((await runOn(boat, ['merge', copy.folder, '--yes'])).out).toContain('Theirs');
  });

  it('of a folder that is not there is 66, and of none or two 64', async () => {
    const { boat, copy } = await twoCopies();
    expect((await runOn(boat, ['merge', join(copy.folder, 'nowhere')])).status).toBe(66);
    expect(await runOn(boat, ['merge'])).toMatchObject({
      status: 64,
      err: expect.stringContaining('<folder> to merge'),
    });
    expect((await runOn(boat, ['merge', copy.folder, copy.folder])).status).toBe(64);
  });

  it('takes in the rest where a file over there cannot be read, and complains of it', async () => {
    const { boat, copy } = await twoCopies();
    mkdirSync(join(copy.log, 'abcdefgh.ndjson'));
    const { status, out, err } = await runOn(boat, ['merge', copy.folder]);
    expect(status).toBe(65);
    expect(out).toContain('Theirs');
    expect(err).toContain('is not a plain file');
  });

  it('gives the facts as JSON', async () => {
    const { boat, copy } = await twoCopies();
    const { out } = await runOn(boat, ['merge', copy.folder, '--json']);
    expect(JSON.parse(out)).toMatchObject({
      format: 1,
      boat: 'Whimbrel',
      from: copy.folder,
      files: expect.arrayContaining([expect.objectContaining({ how: 'new' })]),
      theyLack: true,
      boatDiffers: false,
      entries: [{ text: 'theirs' }],
      struck: [],
    });
  });
});
