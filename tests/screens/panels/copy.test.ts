import { describe, expect, it } from 'vitest';
import { AT } from '../../helpers/a-document.ts';
import { aModel, SIZES, seen } from '../../helpers/a-model.ts';

const day = 86_400_000;
const size = SIZES[3];
const shown = (copy: { at: number | null } | null) =>
  seen(aModel({ size, copy })).filter((line) => line.includes('last checked copy'));

describe('the last checked copy', () => {
  it('is on the board, with how long ago it was made', () => {
    expect(shown({ at: Date.parse(AT) - 2 * day })).toEqual([
      expect.stringContaining('· last checked copy: 2 d '),
    ]);
  });

  it('is nowhere where no second place is named', () => {
    expect(shown(null)).toEqual([]);
  });

  it('made more than a week ago, or never, is to be watched, at the top', () => {
    for (const size of SIZES.slice(1)) {
      const text = (at: number | null) => seen(aModel({ size, copy: { at } })).join('\n');
      expect(text(null)).toContain('~ last checked copy: none yet');
      expect(text(Date.parse(AT) - 8 * day)).toContain('~ last checked copy: 8 d');
    }
  });

  it('by a clock that was set back since has its day, not an age', () => {
    expect(shown({ at: Date.parse(AT) + 3 * day })[0]).toMatch(/last checked copy: on \d/);
  });
});
