import { z } from 'zod';
import { crossTrouble } from './cross-rules.ts';
import { type Entry, type EntryKind, entryKinds } from './entries.ts';
import type { Frame } from './line.ts';
import { upgraded } from './upgrades.ts';

/** What every entry carries beside the fields of its kind. One schema for lines and drafts. */
export const common = {
  at: z.iso.datetime({ precision: null }),
  by: z.string().max(200).optional(),
  key: z.string().min(1).max(200).optional(),
};

/** Fields this version does not know are kept, so these schemas only look: they neither refuse nor copy them. */
const schemas = new Map<string, z.ZodType>(
  Object.entries(entryKinds).map(([kind, schema]) => [
    kind,
    z.object({ ...common, rec: common.at, ...schema.shape }),
  ]),
);

/** A record whose checksum held, as an entry; 'newer' for a kind or version this program does not know; 'values' when a value is out of range. */
export function understand(record: Record<string, unknown>, frame: Frame): Entry | 'newer' | 'values' {
  const known = upgraded(record);
  if (known === null) return 'values';
  if (known === 'newer') return 'newer';
  const kind = known.kind;
  if (typeof kind !== 'string') return 'values';
  const schema = schemas.get(kind);
  if (!schema) return 'newer';
  if (!schema.safeParse(known).success || crossTrouble(kind as EntryKind, known)) return 'values';
  return entryOf(known, frame);
}

function entryOf(record: Record<string, unknown>, { writer, n }: Frame): Entry {
  const entry: Record<string, unknown> = {};
  for (const field of Object.keys(record)) {
    if (field !== 'v' && field !== 'p' && field !== 'crc') entry[field] = record[field];
  }
  entry.writer = writer;
  entry.n = n;
  return entry as unknown as Entry;
}
