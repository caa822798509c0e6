import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clean, cleanLine } from '../../source/words/clean.ts';

describe('text to be drawn', () => {
  test.each([
    ['plain words and marks stay', 'Gear oil: 0.4 L, "now" at ½', 'Gear oil: 0.4 L, "now" at ½'],
    ['line feeds and tabs stay', 'a\n\tb', 'a\n\tb'],
    ['letters of every language stay', 'Übung à Świnoujście 燈台 λ', 'Übung à Świnoujście 燈台 λ'],
    ['accents that stand alone stay on their letter', 'e\u0301', 'e\u0301'],
    ['escape, bell and delete become their pictures', '\u001b[2J\u0007\u007f', '␛[2J␇␡'],
    ['a carriage return cannot go back to the margin', 'safe\runsafe', 'safe␍unsafe'],
    ['C1 controls become marks', '\u009b31m\u0085', '\ufffd31m\ufffd'],
    ['the reading direction cannot be turned', 'a\u202eb\u2066c\u200fd', 'a\ufffdb\ufffdc\ufffdd'],
    [
      'invisible, private and unassigned characters are dropped',
      'a\u200b\u00ad\ue000\u{e0041}\u{50000}b',
      'ab',
    ],
    ['joined characters stay joined', '👩\u200d🔧', '👩\u200d🔧'],
    ['half a character becomes a mark', 'a\ud800b', 'a\ufffdb'],
    ['line and paragraph separators become marks', 'a\u2028b\u2029', 'a\ufffdb\ufffd'],
  ])('%s', (_, text, drawn) => {
    expect(clean(text)).toBe(drawn);
  });

  test('marks piled on one letter end at the eighth', () => {
    const piled = clean(`a${'\u0301'.repeat(50)}b`);
    expect([...piled]).toHaveLength(9);
    expect(piled.endsWith('\ufffdb')).toBe(true);
  });

  test('is cut at the length asked for, between characters', () => {
    expect(clean('abcdef', 3)).toBe('abc…');
    expect(clean('abc', 3)).toBe('abc');
    expect(clean('👩\u200d🔧👩\u200d🔧', 1)).toBe('👩\u200d🔧…');
  });

  test('on one line has no line feeds', () => {
    expect(cleanLine('a\r\nb\tc')).toBe('a b c');
  });
});

const FORBIDDEN =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\p{Bidi_Control}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]|(?!\u200d)\p{Cf}/u;
const GRAPHEMES = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Characters that are trouble on their own or join on to others. */
const nasty = fc.oneof(
  fc.constantFrom(
    '\u001b',
    '\u009b',
    '\u202e',
    '\u200d',
    '\u0301',
    '\ufe0f',
    '\ud800',
    '\u{1f1e6}',
    '\u1100',
    '\u1161',
    '\u11a8',
  ),
  fc.constantFrom('👩', '🏽', '\u0e33', '\u0d4e', '\u0600', '\u0915', '\u094d', '\n', 'a', ']', '\u{e0041}'),
  fc.string({ unit: 'binary', maxLength: 3 }),
);

test('whatever the text: no control, bidi or hidden character, nothing piled over eight, never over the length', () => {
  fc.assert(
    fc.property(fc.array(nasty, { maxLength: 40 }), fc.integer({ min: 0, max: 50 }), (pieces, most) => {
      const drawn = clean(pieces.join(''), most);
      expect(drawn).not.toMatch(FORBIDDEN);
      const shown = [...GRAPHEMES.segment(drawn)];
      expect(shown.length).toBeLessThanOrEqual(most + 1);
      for (const { segment } of shown) expect([...segment].length).toBeLessThanOrEqual(8);
    }),
    { numRuns: 5000, seed: 20260203 },
  );
});

test('cleaned twice it is the same as cleaned once', () => {
  fc.assert(
    fc.property(fc.array(nasty, { maxLength: 40 }), (pieces) => {
      const once = clean(pieces.join(''));
      expect(clean(once)).toBe(once);
    }),
    { numRuns: 2000, seed: 20260203 },
  );
});

test('ten million characters of one kind are cut, not waited for', () => {
  for (const one of ['\u001b[', '\u0301', '\u{1f1e6}', '\u200d', 'a\u0301']) {
    expect(clean(one.repeat(10_000_000 / one.length), 100).length).toBeLessThan(3000);
  }
});
