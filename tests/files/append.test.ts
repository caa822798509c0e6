import { describe, expect, it } from 'vitest';
import type { Draft } from '../../source/logbook/entries.ts';
import { aBoatFolder, bytesOf, hasty, saved } from '../helpers/a-boat-folder.ts';
import { aRemark } from '../helpers/a-laptop.ts';

describe('saving many entries at once', () => {
  it('beyond 64 MB is refused whole: not one of them is written', async () => {
    const boat = aBoatFolder();
    await saved(boat.open(hasty), aRemark('one'));
    const before = bytesOf(boat.files()[0]!);
    // A control character takes six bytes in JSON: some 12 KB an entry.
    const long = aRemark('\u0001'.repeat(2000));
    const drafts: Draft[] = Array.from({ length: 5600 }, () => long);
    const result = await boat.open(hasty).append(drafts);
    expect(result.ok ? [] : result.troubles.map((one) => 'code' in one && one.code)).toEqual(['EFBIG']);
    expect(boat.files().map((file) => bytesOf(file).equals(before))).toEqual([true]);
  });
});
