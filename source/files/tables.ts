import path from 'node:path';
import type { OwnTables } from '../outside.ts';
import { readTable } from '../tracing/read-table.ts';
import type { Disk } from './disk.ts';
import { namesIn } from './names-in.ts';
import { readTextFile } from './read-text.ts';

/** A table of sixty causes and sixty clues stays below. */
const MOST_BYTES = 1024 * 1024;
const MOST_TABLES = 100;

/** The owner's own tables in `tracing/`, by name; those that cannot be used are troubles. */
export function readTables(disk: Disk, boat: string): OwnTables {
  const names = namesIn(disk, path.join(boat, 'tracing')).filter((name) => name.endsWith('.json'));
  const read = names.slice(0, MOST_TABLES).map((name) => {
    const text = readTextFile(disk, path.join(boat, 'tracing', name), MOST_BYTES);
    return text.ok ? readTable(text.value, `tracing/${name}`) : text;
  });
  return {
    tables: read.flatMap((one) => (one.ok ? [one.value] : [])),
    troubles: read.flatMap((one) => (one.ok ? [] : one.troubles)),
  };
}
