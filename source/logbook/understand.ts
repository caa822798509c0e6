import { z } from 'zod';
import { crossTrouble } from './cross-rules.ts';
import { type Entry, type EntryKind, entryKinds } from './entries.ts';
import { type Test, testOf } from './field-test.ts';
import { upgraded } from './upgrades.ts';

/** What every entry carries beside the fields of its kind. One schema for lines and drafts. */
export const common = {
  at: z.iso.datetime({ precision: null }),
  by: z.string().max(200).optional(),
  key: z.string().min(1).max(200).optional(),
};

type FieldTests = readonly { readonly field: string; readonly holds: Test }[];

const fieldTests = new Map<string, FieldTests>();

/** Fields this version does not know are kept, so only those it knows are looked at. Null for a kind it does not know. */
function testsFor(kind: string): FieldTests | null {
  const known = fieldTests.get(kind);
  if (known) return known;
  if (!Object.hasOwn(entryKinds, kind)) return null;
  const { shape } = entryKinds[kind as EntryKind];
  const tests = Object.entries(shape).map(([field, schema]) => ({ field, holds: testOf(schema) }));
  fieldTests.set(kind, tests);
  return tests;
}

/** A record whose checksum held, as an entry; 'newer' for a kind or version this program does not know; 'values' when a value is out of range. */
export function understand<R extends Record<string, unknown>>(record: R): (R & Entry) | 'newer' | 'values' {
  const known = upgraded(record);
  if (known === null) return 'values';
  if (known === 'newer') return 'newer';
  const kind = known.kind;
  if (typeof kind !== 'string') return 'values';
  const tests = testsFor(kind);
  if (!tests) return 'newer';
  if (!commonIsSound(known) || !tests.every(({ field, holds }) => holds(known[field]))) return 'values';
  return crossTrouble(kind as EntryKind, known) ? 'values' : (known as R & Entry);
}

const isInstant = testOf(common.at);
const isBy = testOf(common.by);
const isKey = testOf(common.key);

function commonIsSound({ at, rec, by, key }: Record<string, unknown>): boolean {
  return isInstant(at) && isInstant(rec) && isBy(by) && isKey(key);
}
