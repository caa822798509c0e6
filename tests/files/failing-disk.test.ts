import { describe, expect, it } from 'vitest';
import type { Disk } from '../../source/files/disk.ts';
import { type Findings, liveOnAFailingDisk } from '../helpers/life-on-a-failing-disk.ts';

const lives = 150;

async function firstBad(
  seeds: number,
  spoil?: (disk: Disk) => Disk,
): Promise<{ seed: number; found: Findings } | null> {
  for (let seed = 1; seed <= seeds; seed += 1) {
    const found = await liveOnAFailingDisk(seed, spoil);
    const { lost, invented, falseAlarms, broken } = found;
    if (lost.length + invented.length + falseAlarms.length + broken.length > 0) return { seed, found };
  }
  return null;
}

/** Every call as it is, but those given. */
function changed(disk: Disk, change: Partial<Disk>): Disk {
  return new Proxy(disk, {
    get: (target, name) => {
      const own = change[name as keyof Disk];
      if (own) return own;
      const method = Reflect.get(target, name);
      return typeof method === 'function' ? method.bind(target) : method;
    },
  });
}

describe('on a disk that loses power and fails at any call', () => {
  it('nothing confirmed is lost, nothing is invented, and every failure is told', async () => {
    expect(await firstBad(lives)).toBeNull();
  });

  it('entries do get saved', async () => {
    expect((await liveOnAFailingDisk(1)).confirmed).toBeGreaterThan(10);
  });
});

describe('the same lives find out a program', () => {
  it.each<[string, (disk: Disk) => Partial<Disk>]>([
    ['that does not sync what it wrote', () => ({ syncData: () => {} })],
    ['that does not sync the folder', () => ({ syncFolder: () => {} })],
    ['that does not take back what was only partly written', () => ({ cut: () => {} })],
    [
      'that does not seal a torn line',
      (disk) => ({
        write: (file, bytes, position) => {
          const seal = bytes[0] === 0x0a ? 1 : 0;
          return seal + (bytes.length > seal ? disk.write(file, bytes.subarray(seal), position) : 0);
        },
      }),
    ],
  ])('%s', async (_, change) => {
    const bad = await firstBad(lives, (disk) => changed(disk, change(disk)));
    expect([...(bad?.found.lost ?? []), ...(bad?.found.invented ?? [])]).not.toEqual([]);
  });
});
