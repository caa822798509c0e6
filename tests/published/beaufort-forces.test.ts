// The Beaufort scale as the Met Office prints it, limits in whole knots (reproduced at infotextmanuscripts.org/clio/clio-numbers-12-beaufort-2.html).
import { expect, test } from 'vitest';
import { beaufortKn } from '../../source/forecast/beaufort.ts';
import { testPublished } from '../helpers/published.ts';

test.each([
  [4, 11, 16],
  [6, 22, 27],
  [8, 34, 40],
])('force %d is the middle of %d and %d knots', (force, least, most) => {
  expect(beaufortKn(`f${force}`)).toBe((least + most) / 2);
});

interface Check {
  readonly id: string;
  readonly input: { readonly force?: number };
  readonly expected: { readonly kt_min?: number; readonly kt_max?: number | null };
}

testPublished<readonly Check[]>(
  'every force has its published knots',
  'weather/01_beaufort.json',
  (checks) => {
    const forces = checks.filter(({ id }) => /^bft-\d+-kt$/.test(id));
    expect(forces).toHaveLength(13);
    for (const { input, expected } of forces) {
      const { kt_min: least = 0, kt_max: most } = expected;
      expect(beaufortKn(`f${input.force}`)).toBe((least + (most ?? least)) / 2);
    }
  },
);
