import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EMPTY, type Field, fieldSpans, fieldWith, pastedIn, typedIn } from '../../source/screens/field.ts';
import { widthOf } from '../../source/screens/width.ts';
import { graphemesOf } from '../../source/words/graphemes.ts';

const typedAfter = (field: Field, ...keys: string[]) =>
  keys.reduce((next, key) => typedIn(next, key) ?? next, field);
const shown = (field: Field, columns: number) =>
  fieldSpans(field, columns)
    .map(({ text }) => text)
    .join('');

describe('a field', () => {
  it('takes letters where the caret stands', () => {
    expect(typedAfter(EMPTY, '2', '5', 'left', '.')).toEqual({ text: '2.5', caret: 2 });
    expect(typedAfter(fieldWith('port'), 'space', 'x').text).toBe('port x');
  });

  it('takes out whole letters, accents and all', () => {
    expect(typedAfter(fieldWith('caf\u0065\u0301'), 'backspace').text).toBe('caf');
    expect(typedAfter(fieldWith('abc'), 'home', 'delete').text).toBe('bc');
    expect(typedAfter(fieldWith('gear oil  '), 'ctrl w').text).toBe('gear ');
    expect(typedAfter(fieldWith('abc'), 'left', 'ctrl u').text).toBe('c');
    expect(typedAfter(fieldWith('abc'), 'home', 'right', 'ctrl k').text).toBe('a');
  });

  it('leaves Enter, Escape, up and down to others', () => {
    for (const key of ['enter', 'escape', 'up', 'down', 'tab', 'ctrl c', 'ctrl z', 'page up'])
      expect(typedIn(EMPTY, key)).toBeNull();
  });

  it('takes a pasted page as one line without control characters', () => {
    const { text, caret } = pastedIn(EMPTY, 'one\r\ntwo\u001b[2J\u202e');
    expect(text).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
    expect(text.startsWith('one two')).toBe(true);
    expect(caret).toBe([...graphemesOf(text)].length);
    expect(pastedIn(EMPTY, 'x'.repeat(100_000)).text.length).toBeLessThanOrEqual(2000);
  });

  it('shows the part round the caret, never wider than there is room', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 60 }),
        fc.nat(60),
        fc.integer({ min: 8, max: 40 }),
        (text, back, columns) => {
          const field = typedAfter(pastedIn(EMPTY, text), ...Array<string>(back).fill('left'));
          const line = shown(field, columns);
          expect(line).toContain('▏');
          expect(widthOf(line)).toBeLessThanOrEqual(columns);
        },
      ),
    );
  });
});
