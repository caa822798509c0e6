import { describe, expect, it } from 'vitest';
import { liveOnAFailingDisk } from '../helpers/life-on-a-failing-disk.ts';
import { anyKeys } from './any-keys.ts';
import type { Campaign } from './campaign.ts';
import { copiesOnAFailingDisk } from './copies.ts';
import { drawingFilter } from './drawing.ts';
import {
  interleavedWriters,
  livesOnAFailingDisk,
  plantedFaults,
  replacedOnAFailingDisk,
} from './failing-disk.ts';
import { flippedBits } from './flipped-bits.ts';
import { killed } from './killed.ts';
import { mergeLaws } from './merge-laws.ts';
import { parseMany } from './parse-many.ts';
import { shuffledLines } from './shuffled-lines.ts';
import { tornLines } from './torn-lines.ts';
import { wrongClocks } from './wrong-clocks.ts';

const seed = 1;
/** From here on each planted fault is soon found out. */
const plantedSeed = 44;

describe('a short share of each campaign of `npm run soak` loses nothing, and all that is wrong is told', () => {
  it.each<[Campaign, number]>([
    [killed, 3],
    [livesOnAFailingDisk, 50],
    [replacedOnAFailingDisk, 500],
    [copiesOnAFailingDisk, 60],
    [tornLines, 1],
    [flippedBits, 1],
    [shuffledLines, 300],
    [interleavedWriters, 100],
    [mergeLaws, 40],
    [wrongClocks, 40],
    [drawingFilter, 4000],
    [anyKeys, 25],
  ])('$name', async (campaign, count) => {
    const outcome = await campaign.run(count, seed);
    expect(outcome).toEqual({ count: outcome.count, lost: 0, undetected: 0, notes: [] });
    expect(outcome.count).toBeGreaterThanOrEqual(count);
  });

  it('parsers on mutated texts', () => {
    expect(parseMany(1000, seed)).toEqual({ count: 1000, lost: 0, undetected: 0, notes: [] });
  });
});

describe('the campaigns', () => {
  it('catch every planted fault', async () => {
    const { count } = plantedFaults;
    expect(await plantedFaults.run(count, plantedSeed)).toEqual({ count, lost: 0, undetected: 0, notes: [] });
  });

  it('do get entries saved', async () => {
    expect((await liveOnAFailingDisk(seed)).confirmed).toBeGreaterThan(10);
  });
});
