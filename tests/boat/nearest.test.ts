import { expect, test } from 'vitest';
import { nearest } from '../../source/boat/nearest.ts';

const names = ['low', 'full', 'reserve', 'id', 'topUpUnderWay', 'engine'];

test.each([
  ['lwo', 'low'],
  ['ful', 'full'],
  ['Reserve', 'reserve'],
  ['reserv', 'reserve'],
  ['top_up_under_way', 'topUpUnderWay'],
  ['enigne', 'engine'],
])('%s is taken for a slip of %s', (written, meant) => {
  expect(nearest(written, names)).toBe(meant);
});

test.each(['colour', 'at', 'lo-fi', 'x', '', 'reservation', 'e'.repeat(100_000)])(
  'no known name is near %.20s',
  (written) => {
    expect(nearest(written, names)).toBeUndefined();
  },
);

test('with nothing to choose from there is nothing near', () => {
  expect(nearest('low', [])).toBeUndefined();
});
