import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { aligned, wrapped } from '../../source/words/lines.ts';

describe('columns', () => {
  it('stand under each other, by what the letters take on the screen', () => {
    expect(
      aligned(
        [
          ['a', '1', 'x'],
          ['油油', '22', ''],
          ['bcd', '333', 'y'],
        ],
        new Set([1]),
      ),
    ).toEqual(['a       1  x', '油油   22', 'bcd   333  y']);
  });
});

describe('lines', () => {
  it('break between words and hang under the first', () => {
    expect(wrapped('one two three four', 9, 1, 2)).toEqual([' one two', '   three', '   four']);
  });

  it('keep every word and pass the width only for a word that is wider', () => {
    const words = fc.array(fc.stringMatching(/^[a-z]{1,14}$/), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(words, fc.integer({ min: 10, max: 60 }), (given, columns) => {
        const lines = wrapped(given.join(' '), columns, 2, 2);
        expect(lines.join(' ').trim().split(/\s+/)).toEqual(given);
        for (const line of lines)
          expect(stringWidth(line) <= columns || !line.trim().includes(' ')).toBe(true);
      }),
    );
  });
});
