import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { changeBoat } from '../../source/files/change-boat.ts';
import { realDisk } from '../../source/files/disk.ts';
import { sandpiper } from '../helpers/a-boat.ts';

const MOST = 1_000_000;
let folder = '';

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-change-'));
  writeFileSync(path.join(folder, 'boat.json'), JSON.stringify({ ...sandpiper, mine: 'kept' }, null, 2));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const text = (name: string) => readFileSync(path.join(folder, name), 'utf8');
const change = (field: string, value: unknown) =>
  changeBoat(
    realDisk,
    folder,
    { kind: 'fluids', id: 'gear-oil', how: 'change', set: [{ path: [field], value }] },
    MOST,
  );

describe('changing boat.json', () => {
  it('writes the change, keeps what it does not know, and the file before it beside', () => {
    const before = text('boat.json');
    expect(change('note', 'under the sole')).toEqual({ ok: true, value: null });
    expect(JSON.parse(text('boat.json'))).toMatchObject({ mine: 'kept' });
    expect(text('boat.json')).toContain('under the sole');
    expect(text('boat.json.bak')).toBe(before);
  });

  it('is not written where the file would be in trouble, and says where', () => {
    const before = text('boat.json');
    expect(change('low', 99)).toMatchObject({
      ok: false,
      troubles: [{ kind: 'out of order', place: { path: expect.stringContaining('low') } }],
    });
    expect(text('boat.json')).toBe(before);
    expect(readdirSync(folder)).toEqual(['boat.json']);
  });

  it('is not written over what somebody else changed since it was typed, nor into what is gone', () => {
    const set = [{ path: ['low'], value: 0.9 }];
    const change = { kind: 'fluids', id: 'gear-oil', how: 'change', set } as const;
    const low = (value: number) =>
      changeBoat(realDisk, folder, { ...change, was: [{ path: ['low'], value }] }, MOST);
    const before = text('boat.json');
    expect(low(1)).toEqual({
      ok: false,
      troubles: [{ kind: 'changed meanwhile', id: 'gear-oil', field: 'low' }],
    });
    expect(text('boat.json')).toBe(before);
    expect(low(1.1)).toEqual({ ok: true, value: null });
    writeFileSync(path.join(folder, 'boat.json'), before.replaceAll('"gear-oil"', '"sump-oil"'));
    expect(low(1.1)).toMatchObject({ ok: false, troubles: [{ kind: 'changed meanwhile', field: null }] });
  });

  it('starts from the file as it stands, not as it was read', () => {
    writeFileSync(path.join(folder, 'boat.json'), text('boat.json').replace('"kept"', '"changed by hand"'));
    change('note', 'new');
    expect(text('boat.json')).toContain('changed by hand');
  });
});
