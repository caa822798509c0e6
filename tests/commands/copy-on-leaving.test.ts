import { describe, expect, it } from 'vitest';
import { copyOnLeaving } from '../../source/commands/copy-on-leaving.ts';
import type { BoatFolder, CheckedCopy } from '../../source/outside.ts';
import { bad, good, type Result } from '../../source/trouble.ts';
import { aFolder, anOutside, NOW } from '../helpers/an-outside.ts';

const other = { boat: '/boats/godwit', place: '/stick', at: '2026-01-01T00:00:00Z' };
const copy: CheckedCopy = { from: '/boats/whimbrel', to: '/stick/whimbrel', entries: 12, more: 0 };

function leaving(made: Result<CheckedCopy>, backup: string | null) {
  const outside = anOutside({ folders: { boat: aFolder({}) }, settings: { backup, checkedCopies: [other] } });
  const asked: string[] = [];
  const folder: BoatFolder = {
    ...outside.boat('boat'),
    copyTo: async (place) => {
      asked.push(place);
      return made;
    },
  };
  return { outside, asked, status: copyOnLeaving(folder, outside) };
}

describe('leaving the board', () => {
  it('copies nothing where no second place is named', async () => {
    const { outside, asked, status } = leaving(good(copy), null);
    expect(await status).toBe(0);
    expect(asked).toEqual([]);
    expect(outside.written()).toEqual({ out: '', err: '' });
  });

  it('copies to the place named, says so, and remembers when, that of other boats too', async () => {
    const { outside, asked, status } = leaving(good(copy), '/stick');
    expect(await status).toBe(0);
    expect(asked).toEqual(['/stick']);
    const at = new Date(NOW).toISOString();
    expect(outside.remembered).toEqual([
      { checkedCopies: [{ boat: '/boats/whimbrel', place: '/stick', at }, other] },
    ]);
    expect(outside.written().err).toBe(
      'copying to /stick ...\ncopied and checked: 12 entries in /stick/whimbrel\n',
    );
  });

  it('says how to take in what only the copy has', async () => {
    const { outside, status } = leaving(good({ ...copy, more: 1 }), '/stick');
    await status;
    expect(outside.written().err).toContain('the copy has 1 entry that is not here');
    expect(outside.written().err).toContain('hoveshort merge /stick/whimbrel --boat /boats/whimbrel');
  });

  it('says what went wrong, and remembers no copy then', async () => {
    const { outside, status } = leaving(bad({ kind: 'not copied', to: '/stick', code: 'ENOENT' }), '/stick');
    expect(await status).toBe(74);
    expect(outside.remembered).toEqual([]);
    expect(outside.written().err).toContain('the copy in /stick was not made: it is not there (ENOENT)');
  });
});
