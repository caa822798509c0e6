type Fields = Record<string, unknown>;

/**
 * Step i turns a record of version i + 1 into one of version i + 2: pure, numbered without gaps, kept for ever.
 * Lines on the disk are never rewritten; a log holds lines of every version it has lived through.
 */
const upgrades: readonly ((record: Fields) => Fields)[] = [];

/** The version written to new lines. */
export const lineVersion = upgrades.length + 1;

/** Brings a record up to `lineVersion`; 'newer' when this program is too old for it, null when `v` is no version. */
export function upgraded(record: Fields): Fields | 'newer' | null {
  const v = record.v;
  if (typeof v !== 'number' || !Number.isInteger(v) || v < 1) return null;
  if (v > lineVersion) return 'newer';
  return upgrades.slice(v - 1).reduce((known, step) => step(known), record);
}
