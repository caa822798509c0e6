import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { writeLine } from '../../source/logbook/line.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside, type FolderInMemory } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };

async function inspect(folder: FolderInMemory, args: readonly string[] = []) {
  const outside = anOutside({ folders: { '.': folder } });
  const status = await run(['inspect', ...args], outside, noScreens);
  return { status, ...outside.written() };
}

const at = '2026-02-03T07:10:00Z';

describe('inspect', () => {
  it('says that a sound log is sound', async () => {
    expect(await inspect(aFolder(sandpiper, healthyLog))).toEqual({
      status: 0,
      out: '15 entries, and 0 struck. What was saved is sound.\n',
      err: '',
    });
  });

  it('shows a damaged line with its file and place, and returns 65', async () => {
    const folder = aFolder(sandpiper, healthyLog);
    folder.lines[5] = new TextEncoder().encode('scribble');
    const { status, out, err } = await inspect(folder);
    expect({ status, err }).toEqual({ status: 65, err: '' });
    expect(out).toContain('log/aaaaaaaa.ndjson, line 6: ');
    expect(out).toContain('scribble');
    expect(out).toContain('14 entries, and 0 struck. Something is damaged: see above.\n');
  });

  it.each<[string, Draft]>([
    ['an unknown item', { kind: 'dip', at, fluid: 'gear-oill', share: 1 }],
    ['a meter gone back', { kind: 'hours', at, engine: 'main', reading: 4 }],
  ])('returns 65 for %s, which is kept and left out of the sums', async (_, draft) => {
    const { status, out } = await inspect(aFolder(sandpiper, [...healthyLog, draft]));
    expect(status).toBe(65);
    expect(out).toContain('16 entries');
  });

  it('keeps and counts entries of a newer version, and finds nothing wrong with them', async () => {
    const folder = aFolder(sandpiper, healthyLog);
    folder.lines.push(newerLine(folder));
    const { status, out } = await inspect(folder);
    expect(status).toBe(0);
    expect(out).toContain('1 entry from a newer version is not in this answer');
  });

  it('gives the facts of every trouble as JSON', async () => {
    const folder = aFolder(sandpiper, [...healthyLog, { kind: 'hours', at, engine: 'main', reading: 4 }]);
    const { out } = await inspect(folder, ['--json']);
    expect(JSON.parse(out)).toMatchObject({
      sound: false,
      entries: 16,
      struck: 0,
      trouble: [{ kind: 'odd reading', item: 'main', value: 4, why: 'meter back' }],
    });
  });

  it('says what stands in the way of saving', async () => {
    const readOnly = { kind: 'read only', folder: '.', code: 'EROFS' } as const;
    const { status, out } = await inspect(aFolder(sandpiper, healthyLog, { readOnly }));
    expect(status).toBe(0);
    expect(out).toContain('nothing can be saved in it');
  });

  it('returns 65 for a boat file from a newer version', async () => {
    const { status, out, err } = await inspect(aFolder({ ...sandpiper, format: 99 }));
    expect({ status, out }).toEqual({ status: 65, out: '' });
    expect(err).toContain('99');
  });
});

/** A sound line of version 99, as a later program would have written it. */
function newerLine(folder: FolderInMemory): Uint8Array {
  const last = new TextDecoder().decode(folder.lines.at(-1));
  const record = { v: 99, id: 'aaaaaaaa-16', p: last.slice(-10, -2), lc: 16, at, rec: at, kind: 'omen' };
  return writeLine(record, crc32).bytes.subarray(0, -1);
}
