import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { entryKinds } from '../../source/logbook/entries.ts';
import { testOf } from '../../source/logbook/field-test.ts';
import { common } from '../../source/logbook/understand.ts';

const fields: readonly (readonly [string, z.ZodType])[] = [
  ...Object.entries(common),
  ...Object.entries(entryKinds).flatMap(([kind, { shape }]) =>
    Object.entries(shape).map(([field, schema]) => [`${kind}.${field}`, schema as z.ZodType] as const),
  ),
];

/** What entries hold, and what is near it: at and beyond limits, of another type, in another form. */
const value = fc.oneof(
  fc.double(),
  fc.integer({ min: -2, max: 1001 }),
  fc.constantFrom(-1e6, 1e6, 1e6 + 1, 1.2, 1.21, 850, 849, 1100, 0, -0, 100, 101),
  fc.constantFrom('gear-oil', 'Gear', '', '-a', 'dry', 'falls', 'none', 'go', 'stopped-cold', 'a\n'),
  fc.constantFrom(
    '2026-02-03',
    '2026-02-30',
    '2026-02-03T07:42:00Z',
    '2026-02-03T07:42Z',
    '2026-02-03T25:00:00Z',
  ),
  fc.nat({ max: 2100 }).map((length) => 'x'.repeat(length)),
  fc.constantFrom(undefined, null, true, false, [], {}, [{ spare: 'fuse', count: 1 }], [{ spare: 'fuse' }]),
  fc.string(),
);

describe('the plain test of a field', () => {
  it.each(fields)('answers for %s as its schema does', (_, schema) => {
    const holds = testOf(schema);
    fc.assert(
      fc.property(value, (one) => {
        expect(holds(one)).toBe(schema.safeParse(one).success);
      }),
    );
  });

  it('leaves to the schema what it does not know', () => {
    for (const schema of [
      z.number().gt(0),
      z.number().multipleOf(2),
      z.string().regex(/a/g),
      z.string().trim().max(2),
    ]) {
      const holds = testOf(schema);
      for (const one of [0, 1, 2, 3, 'a', 'ba', ' a ', 'aaa'])
        expect(holds(one), String(one)).toBe(schema.safeParse(one).success);
    }
  });
});
