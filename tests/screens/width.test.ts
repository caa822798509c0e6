import { createRequire } from 'node:module';
import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { asciiOf } from '../../source/screens/ascii.ts';
import { cut, onThePoint, pad, widthOf, wrapWords } from '../../source/screens/width.ts';

describe('text by the columns it takes', () => {
  it('the short way to measure agrees with the long one', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(widthOf(text)).toBe(stringWidth(text));
      }),
    );
    for (const sign of '·─…▪▫↑↓⠿⡀–—’éßØ') expect(widthOf(sign), sign).toBe(stringWidth(sign));
  });

  it('a text is cut to its columns, and a letter is never split', () => {
    expect(cut('gear oil', 8)).toBe('gear oil');
    expect(cut('gear oil', 6)).toBe('gear …');
    expect(cut('海水ポンプ', 6)).toBe('海水…');
    expect(cut('e\u0301e\u0301e\u0301', 2)).toBe('e\u0301…');
    expect(cut('anything', 0)).toBe('');
  });

  it('a text is filled to its columns', () => {
    expect(pad('oil', 5)).toBe('oil  ');
    expect(pad('oil', 5, 'right')).toBe('  oil');
    expect(pad('海水', 5)).toBe('海水 ');
  });

  it('words are broken between words, long ones inside', () => {
    expect(wrapWords('she is fit, the weather is not', 12)).toEqual(['she is fit,', 'the weather', 'is not']);
    expect(wrapWords('abcdefghij', 4)).toEqual(['abcd', 'efgh', 'ij']);
    expect(wrapWords('  ', 4)).toEqual([]);
  });

  it('no line is wider than asked, and no letter is lost', () => {
    const words = fc.array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }), { maxLength: 12 });
    fc.assert(
      fc.property(words, fc.integer({ min: 2, max: 30 }), (list, columns) => {
        const text = list.join(' ');
        const lines = wrapWords(text, columns);
        for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(columns);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      }),
    );
  });

  it('figures stand on their decimal points', () => {
    expect(onThePoint(['5.1 L', '1.18 L', '214 L', '-'])).toEqual([
      '  5.1  L',
      '  1.18 L',
      '214    L',
      '  -     ',
    ]);
    expect(onThePoint(['3 412.6 h', '97.25 h'])).toEqual(['3 412.6  h', '   97.25 h']);
    expect(onThePoint([])).toEqual([]);
  });
});

describe('a terminal without UTF-8', () => {
  it('gets the same page in ASCII, as wide as before', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const single = [...text].filter((letter) => widthOf(letter) > 0).join('');
        const ascii = asciiOf(single, widthOf);
        expect(ascii).toMatch(/^[\u0000-\u007e]*$/u);
        expect(ascii.length).toBe([...single].reduce((sum, letter) => sum + widthOf(letter), 0));
      }),
    );
  });

  it('marks, bars, rules and accents have their likes', () => {
    expect(asciiOf('· fit  [ ▫▫▪ ]  ──  é ø …', widthOf)).toBe('. fit  [ oo# ]  --  e o ~');
  });

  it('a chart keeps its heights', () => {
    expect(asciiOf('⠉⠒⠤⣀⡇', widthOf)).toBe("'--.|");
  });
});

describe('what is bundled in place of the package that measures', () => {
  const bundled = createRequire(import.meta.url)('../../.ci/string-width.cjs') as typeof stringWidth;

  it('measures as the package does, with and without colours and weights', () => {
    const style = fc.constantFrom(
      '\u001b[1m',
      '\u001b[22m',
      '\u001b[38;5;9m',
      '\u001b[0m',
      '\u001b[?25l',
      '\u001b]8;;x\u0007',
    );
    const word = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.constantFrom(' 4.03 L  [   ▪  ]', '⠿⣀', '漢字', '👍🏽', '─'),
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(style, word)), fc.boolean(), (parts, countAnsiEscapeCodes) => {
        const text = parts.join('');
        expect(bundled(text)).toBe(stringWidth(text));
        expect(bundled(text, { countAnsiEscapeCodes })).toBe(stringWidth(text, { countAnsiEscapeCodes }));
      }),
    );
  });
});
