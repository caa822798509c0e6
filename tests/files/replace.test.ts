import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Disk, realDisk } from '../../source/files/disk.ts';
import { replaceFile } from '../../source/files/replace.ts';
import { aFolder } from '../helpers/a-boat-folder.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const textOf = (file: string) => readFileSync(file, 'utf8');

function aFile(text: string) {
  const folder = aFolder();
  const file = join(folder, 'boat.json');
  writeFileSync(file, text);
  return { folder, file };
}

describe('replacing a file', () => {
  it('puts the new one in its place, the old one beside it when asked, and leaves nothing else', () => {
    const { folder, file } = aFile('old');
    expect(replaceFile(realDisk, file, bytes('new'), { backup: true })).toBeNull();
    expect([textOf(file), textOf(`${file}.bak`)]).toEqual(['new', 'old']);
    expect(replaceFile(realDisk, file, bytes('newer'))).toBeNull();
    expect([textOf(file), textOf(`${file}.bak`)]).toEqual(['newer', 'old']);
    expect(readdirSync(folder).toSorted()).toEqual(['boat.json', 'boat.json.bak']);
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });

  it('makes one that was not there', () => {
    const file = join(aFolder(), 'boat.json');
    expect(replaceFile(realDisk, file, bytes('new'), { backup: true })).toBeNull();
    expect(textOf(file)).toBe('new');
  });

  it('is not stopped by what a power cut left of an earlier attempt', () => {
    const { file } = aFile('old');
    writeFileSync(`${file}.new`, 'half');
    expect(replaceFile(realDisk, file, bytes('new'))).toBeNull();
    expect(textOf(file)).toBe('new');
  });

  it('goes on where the disk takes the bytes piece by piece', () => {
    const { file } = aFile('old');
    const write: Disk['write'] = (opened, all, position) =>
      realDisk.write(opened, all.subarray(0, 2), position);
    expect(replaceFile({ ...realDisk, write }, file, bytes('piece by piece'))).toBeNull();
    expect(textOf(file)).toBe('piece by piece');
  });

  it('that fails at any step leaves the old one whole, and says so', () => {
    const steps = ['open', 'write', 'openFacts', 'sync', 'rename'] as const;
    for (const step of steps) {
      const { file } = aFile('old');
      const failing = () => {
        throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      };
      expect(replaceFile({ ...realDisk, [step]: failing }, file, bytes('new'))).toEqual({
        file,
        code: 'ENOSPC',
      });
      expect(textOf(file), step).toBe('old');
    }
    const { file } = aFile('old');
    expect(replaceFile({ ...realDisk, write: () => 0 }, file, bytes('new'))).toEqual({
      file,
      code: 'ENOSPC',
    });
    const shorter: Disk['openFacts'] = (opened) => ({ ...realDisk.openFacts(opened), bytes: 1 });
    expect(replaceFile({ ...realDisk, openFacts: shorter }, file, bytes('new'))).toEqual({
      file,
      code: 'EIO',
    });
    expect(textOf(file)).toBe('old');
  });

  it('has the new bytes on the disk before their name, and the name before it says so', () => {
    const { folder, file } = aFile('old');
    const calls: string[] = [];
    const noted =
      <A extends unknown[]>(call: string, action: (...given: A) => void) =>
      (...given: A) => {
        calls.push(call);
        action(...given);
      };
    const disk: Disk = {
      ...realDisk,
      sync: noted('sync', realDisk.sync),
      rename: noted('rename', realDisk.rename),
      syncFolder: noted(`sync ${folder}`, realDisk.syncFolder),
    };
    replaceFile(disk, file, bytes('new'));
    expect(calls).toEqual(['sync', 'rename', `sync ${folder}`]);
  });
});
