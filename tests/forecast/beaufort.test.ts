import { expect, test } from 'vitest';
import { beaufortKn } from '../../source/forecast/beaufort.ts';

test.each([
  ['f0', 0],
  ['f1', 2],
  ['F 6', 24.5],
  ['bft 8', 37],
  ['force 12', 64],
  ['f6-7', 27.5],
  ['f6 to 7', 27.5],
])('%s is %d knots in the middle', (typed, knots) => {
  expect(beaufortKn(typed)).toBe(knots);
});

test.each(['6', 'f13', 'f7-6', 'f', 'knots', 'f-1'])('%s is no force', (typed) => {
  expect(beaufortKn(typed)).toBeNull();
});
