import { expect, it } from 'vitest';
import { cleaned } from '../../source/words/cleaned.ts';

it('makes every text of a value safe to draw, however deep, and leaves the rest as it is', () => {
  const value = {
    a: 'x\u001by',
    b: [{ c: 'one\ntwo', d: 1.5, e: null, f: true }],
    trouble: ['one\ntwo\u0007'],
  };
  expect(cleaned(value, ['trouble'])).toEqual({
    a: 'x\u241by',
    b: [{ c: 'one two', d: 1.5, e: null, f: true }],
    trouble: ['one\ntwo\u2407'],
  });
});
