import { expect, it } from 'vitest';
import { keyWords } from '../../source/screens/key-words.ts';
import { aModel, moved, SIZES, seen } from '../helpers/a-model.ts';

it('keys are in words where arrows cannot be drawn, in the table and on the bottom line', () => {
  expect(keyWords('Shift+Tab ← h', { arrows: false })).toBe('Shift+Tab Left h');
  expect(keyWords('↑↓ choose', { arrows: false })).toBe('Up/Down choose');
  expect(keyWords('↑↓ choose', { arrows: true })).toBe('↑↓ choose');
  const model = aModel({ arrows: false, size: SIZES[3] });
  expect(seen(model).at(-1)).toContain('Up/Down choose');
  for (const line of seen(moved(model, '?'))) expect(line).not.toMatch(/[↑↓←→]/u);
});

it('on a narrow bottom line what Enter does is kept', () => {
  const narrow = aModel({ size: SIZES[0] });
  expect(seen(moved(narrow, 'm')).at(-1)).toMatch(/^ {2}Enter save .*\? keys/u);
  expect(seen(narrow).at(-1)).toMatch(/^ {2}Enter open .*q leave/u);
});
