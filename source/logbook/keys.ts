import { byCause, type Sound } from './cause.ts';

/** Entries left out because another has the same `key`, each with the one that stands for both. */
export type Copies = ReadonlyMap<Sound, Sound>;

/** Of entries with one `key` the first by cause counts. */
export function onceByKey(lines: readonly Sound[]): {
  readonly once: readonly Sound[];
  readonly copies: Copies;
} {
  const firsts = new Map<string, Sound>();
  const copies = new Map<Sound, Sound>();
  for (const line of lines) {
    if (line.key === undefined) continue;
    const first = firsts.get(line.key);
    if (!first || byCause(line, first) < 0) firsts.set(line.key, line);
  }
  if (firsts.size === 0) return { once: lines, copies };
  const once = lines.filter((line) => {
    const first = line.key === undefined ? line : firsts.get(line.key);
    if (first && first !== line) copies.set(line, first);
    return first === line;
  });
  return { once, copies };
}
