import { z } from 'zod';
import { crossTrouble } from './cross-rules.ts';
import { type Entry, type EntryKind, entryKinds } from './entries.ts';
import { upgraded } from './upgrades.ts';

/** What every entry carries beside the fields of its kind. One schema for lines and drafts. */
export const common = {
  at: z.iso.datetime({ precision: null }),
  by: z.string().max(200).optional(),
  key: z.string().min(1).max(200).optional(),
};

/** Fields this version does not know are kept, so these schemas only look: they neither refuse nor copy them. */
const schemas = new Map<string, z.ZodType>(
  Object.entries(entryKinds).map(([kind, schema]) => [kind, z.object(schema.shape)]),
);

/** A record whose checksum held, as an entry; 'newer' for a kind or version this program does not know; 'values' when a value is out of range. */
export function understand<R extends Record<string, unknown>>(record: R): (R & Entry) | 'newer' | 'values' {
  const known = upgraded(record);
  if (known === null) return 'values';
  if (known === 'newer') return 'newer';
  const kind = known.kind;
  if (typeof kind !== 'string') return 'values';
  const schema = schemas.get(kind);
  if (!schema) return 'newer';
  if (!commonIsSound(known) || !schema.safeParse(known).success) return 'values';
  return crossTrouble(kind as EntryKind, known) ? 'values' : (known as R & Entry);
}

const instantPattern = common.at._zod.pattern;

/** The same rules as the schemas of `common`, without the cost of four schemas a line: most of a year's lines differ in nothing else. */
function commonIsSound({ at, rec, by, key }: Record<string, unknown>): boolean {
  if (typeof at !== 'string' || !instantPattern.test(at)) return false;
  if (typeof rec !== 'string' || !instantPattern.test(rec)) return false;
  return (
    (by === undefined || common.by.safeParse(by).success) &&
    (key === undefined || common.key.safeParse(key).success)
  );
}
