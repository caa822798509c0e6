import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { locksIn } from '../../source/files/lock.ts';
import { aBoatFolder, aFolder, loaded, textsIn } from '../helpers/a-boat-folder.ts';

const script = fileURLToPath(new URL('../helpers/append-many.ts', import.meta.url));
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
