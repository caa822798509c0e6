// What warnings mean in knots: National Weather Service (coastal and High Seas Forecast definitions); and the gust factor at sea of WMO/TD-1555 (Harper and
// others, 2010), table 1.1.
import { expect, test } from 'vitest';
import { GUST_FACTOR } from '../../source/forecast/at.ts';
import { readProse } from '../../source/forecast/bulletin/prose.ts';
import { testPublished } from '../helpers/published.ts';

interface Check {
  readonly id: string;
  readonly expected: { readonly kt_min: number; readonly kt_max: number | null };
}
const knots = (prose: string) => readProse(prose, 'knots').wind.map(({ low, high }) => [low, high]);

test('gale force is 34 to 47 knots, storm force 48 to 63, hurricane force 64 and more', () => {
  expect(knots('Gale force winds.')).toEqual([[34, 47]]);
  expect(knots('Storm force winds.')).toEqual([[48, 63]]);
  expect(knots('Hurricane force winds.')).toEqual([[64, 64]]);
});

testPublished<readonly Check[]>(
  'words for warned winds have their published knots',
  'weather/03_warnings.json',
  (checks) => {
    const of = (id: string) => checks.find((check) => check.id === id)!.expected;
    for (const [id, word] of [
      ['nws-gale', 'Gale'],
      ['nws-storm-hsf', 'Storm'],
      ['nws-hf-hsf', 'Hurricane'],
    ] as const)
      expect(knots(`${word} force winds.`), id).toEqual([[of(id).kt_min, of(id).kt_max ?? of(id).kt_min]]);
  },
);

testPublished<readonly { readonly id: string; readonly expected: number }[]>(
  'the gust taken where none is said is the gust over an hour of wind at sea',
  'weather/07_gust_waves.json',
  (checks) => {
    expect(GUST_FACTOR).toBe(checks.find(({ id }) => id === 'wmo-gust-at-sea-1h')?.expected);
  },
);
