// NIST Special Publication 811 (2008), "Guide for the Use of the International System of Units", Appendix B.8 and B.9
// (https://www.nist.gov/pml/special-publication-811): factors exact by definition, and the conventional inch and millimetre of mercury.
import { expect, test } from 'vitest';
import type { Preferred } from '../../source/outside.ts';
import { amountFrom } from '../../source/words/amounts.ts';
import { FILE_UNITS, prefer, shownUnit } from '../../source/words/preferred.ts';
import type { Unit } from '../../source/words/units.ts';
import { expectNear, testPublished } from '../helpers/published.ts';

function amount(typed: string, unit: Unit): number {
  const read = amountFrom(typed, unit, 'amount');
  if (!read.ok) throw new Error(`${typed} was not understood`);
  return read.value;
}

test.each<[string, Unit, number]>([
  ['1 us gal', 'L', 3.785411784],
  ['1 imp gal', 'L', 4.54609],
  ['1 qt', 'L', 0.946352946],
  ['1 us fl oz', 'L', 0.0295735295625],
  ['10 m/s', 'kn', 19.438444924406046],
  ['1 ft', 'm', 0.3048],
  ['1 fathom', 'm', 1.8288],
  ['1 lb', 'kg', 0.45359237],
  ['1 in', 'mm', 25.4],
  ['1 inhg', 'hPa', 33.86389],
])('%s is the published amount of %s', (typed, unit, value) => {
  expectNear(amount(typed, unit), value, { relative: 1e-12 });
});

test('the preferred units are the published ones', () => {
  const each = (unit: string, about: number, change: Partial<Preferred>) => {
    prefer({ ...FILE_UNITS, ...change });
    const { name, each: one } = shownUnit(unit, about);
    prefer(FILE_UNITS);
    return [name, one];
  };
  expect(each('L', 100, { volume: 'US' })).toEqual(['US gal', 3.785411784]);
  expect(each('L', 1, { volume: 'US' })).toEqual(['US qt', 0.946352946]);
  expect(each('L', 100, { volume: 'imperial' })).toEqual(['imp gal', 4.54609]);
  expect(each('L', 1, { volume: 'imperial' })).toEqual(['imp pt', 0.56826125]);
  expect(each('m', 1, { height: 'ft' })).toEqual(['ft', 0.3048]);
  const [name, metreASecond] = each('kn', 1, { wind: 'm/s' });
  expect(name).toBe('m/s');
  expectNear(metreASecond as number, 3600 / 1852, { relative: 1e-15 });
});

interface Check {
  readonly id: string;
  readonly input: { readonly value: number; readonly from: string; readonly to: string };
  readonly expected: number;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
}

/** How a person types the unit, and how many of the published unit the file unit is. */
const UNITS: { readonly [name: string]: readonly [unit: Unit, ours: number] } = {
  L: ['L', 1],
  mL: ['L', 1000],
  hPa: ['hPa', 1],
  m: ['m', 1],
  kg: ['kg', 1],
  km: ['nm', 1.852],
  kn: ['kn', 1],
  'm/s': ['kn', 1852 / 3600],
  'km/h': ['kn', 1.852],
};

testPublished<{ checks: readonly Check[] }>(
  'every factor a person can type',
  'machinery/01_units.json',
  ({ checks }) => {
    let compared = 0;
    for (const { id, input, expected, tolerance } of checks) {
      const to = UNITS[input.to];
      const typed = `${input.value} ${input.from.replace(' (conventional)', '')}`;
      const read = to ? amountFrom(typed, to[0], id) : undefined;
      if (!to || !read?.ok) continue;
      compared += 1;
      expectNear(read.value * to[1], expected, {
        relative: tolerance.rel ?? 0,
        absolute: tolerance.abs ?? 0,
        what: id,
      });
    }
    expect(compared).toBeGreaterThanOrEqual(19);
  },
);
