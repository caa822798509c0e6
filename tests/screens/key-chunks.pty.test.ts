import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { keyChunks } from '../soak/keys.ts';

const ready = existsSync('built/hoveshort.js') && process.platform === 'linux';

describe.skipIf(!ready)('keys into the built program (skipped until built, and off Linux)', () => {
  it('one by one or in any chunks give the same screens and entries: a short share of `npm run soak -- keys`', async () => {
    const { count, lost, notes } = await keyChunks.run(3, 1);
    expect({ count, lost, told: lost > 0 ? notes : [] }).toEqual({ count: 3, lost: 0, told: [] });
  }, 120_000);
});
