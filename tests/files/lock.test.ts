import { execFile } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { locksIn } from '../../source/files/lock.ts';
import { aBoatFolder, aFolder, loaded, saved, textsIn } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

const script = fileURLToPath(new URL('../helpers/append-many.ts', import.meta.url));
const mergeScript = fileURLToPath(new URL('../helpers/merge-many.ts', import.meta.url));
const run = promisify(execFile);

describe('two processes of one laptop', () => {
  it('saving at the same time, from the first entry on, lose none, share one writer, and hear no warning', async () => {
    const boat = aBoatFolder();
    const each = 150;
    const outputs = await Promise.all(
      ['ann', 'bob'].map((name) =>
        run(process.execPath, [script, boat.folder, boat.state, name, String(each)]),
      ),
    );
    expect(outputs.map(({ stderr }) => stderr)).toEqual(['', '']);
    const ids = outputs.flatMap(({ stdout }) => stdout.trim().split('\n'));
    expect(new Set(ids).size).toBe(2 * each);
    const { entries, troubles } = await loaded(boat.open());
    expect(new Set(entries.map(({ id }) => id))).toEqual(new Set(ids));
    expect(troubles).toEqual([]);
    expect(boat.files()).toHaveLength(1);
    const wanted = ['ann', 'bob'].flatMap((name) => Array.from({ length: each }, (_, i) => `${name} ${i}`));
    expect((await textsIn(boat.open())).toSorted()).toEqual(wanted.toSorted());
  });
});

describe('a merge while another process saves', () => {
  it('that puts a new file in the place of the one saved to loses no entry of either', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(), aRemark('together'));
    const clone = aBoatFolder(join(aFolder(), 'clone'));
    cpSync(boat.folder, clone.folder, { recursive: true });
    cpSync(boat.state, clone.state, { recursive: true });
    // From here on the two go different ways, whichever process is first.
    await saved(boat.open(), aRemark('apart'));
    const [each, merges] = [100, 25];
    const [saving, merging] = await Promise.all([
      run(process.execPath, [script, boat.folder, boat.state, 'ann', String(each)]),
      run(process.execPath, [
        mergeScript,
        boat.folder,
        boat.state,
        clone.folder,
        clone.state,
        String(merges),
      ]),
    ]);
    expect([saving.stderr, merging.stderr]).toEqual(['', '']);
    expect(merging.stdout).toContain('united');
    const wanted = [
      'together',
      'apart',
      ...Array.from({ length: each }, (_, i) => `ann ${i}`),
      ...Array.from({ length: merges }, (_, i) => `clone ${i}`),
    ];
    expect((await textsIn(boat.open())).toSorted()).toEqual(wanted.toSorted());
    expect(new Set(saving.stdout.trim().split('\n')).size).toBe(each);
  });
});

describe('a lock', () => {
  it('is given back when the work throws', () => {
    const lock = locksIn(aFolder());
    const fault = () =>
      lock('abcdefgh', () => {
        throw new Error('a fault');
      });
    expect(fault).toThrow('a fault');
    expect(lock('abcdefgh', () => 'done')).toBe('done');
  });

  it('that cannot be made throws an error with a code', () => {
    const lock = locksIn(join(aFolder(), 'not there'));
    expect(() => lock('abcdefgh', () => {})).toThrow(expect.objectContaining({ code: expect.any(String) }));
  });
});
