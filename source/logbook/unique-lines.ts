import { assert, type LogTrouble } from '../trouble.ts';
import type { Sound } from './cause.ts';
import type { LogFile } from './chain.ts';

interface UniqueLines {
  readonly lines: readonly Sound[];
  /** Lines of a kind or version this program does not know. */
  readonly newer: number;
  readonly forks: readonly LogTrouble[];
}

/**
 * Every line once, however many copies of it there are. Where one id stands for two different lines both are kept, each then called by its id and checksum.
 * `tidy`: the chains have shown that there are no copies.
 */
export function uniqueLines(files: readonly LogFile[], tidy: boolean): UniqueLines {
  const found: Sound[] = [];
  const newer = new Set<string>();
  for (const { lines } of files) {
    for (const line of lines) {
      if (line.how === 'entry') found.push(line.frame);
      else if (line.how === 'newer') newer.add(`${line.frame.writer}-${line.frame.n}:${line.frame.crc}`);
    }
  }
  if (tidy) return { lines: found, newer: newer.size, forks: [] };
  const byId = new Map<string, Sound[]>();
  for (const line of found) {
    const same = byId.get(line.id);
    if (!same) byId.set(line.id, [line]);
    else if (same.every(({ crc }) => crc !== line.crc)) same.push(line);
  }
  const lines = [...byId.values()].flatMap((same) => (same.length > 1 ? same.map(withChecksum) : same));
  return { lines, newer: newer.size, forks: forksIn(files, byId) };
}

function withChecksum(line: Sound): Sound {
  return { ...line, id: `${line.id}:${line.crc}` };
}

function forksIn(files: readonly LogFile[], byId: ReadonlyMap<string, readonly Sound[]>): LogTrouble[] {
  return files.flatMap(({ name: file, lines }) =>
    lines.flatMap((line, i): LogTrouble[] => {
      if (line.how !== 'entry') return [];
      const same = byId.get(line.frame.id);
      assert(same, 'every entry was found');
      const second = same.length > 1 && same.indexOf(line.frame) > 0;
      return second ? [{ kind: 'same id twice', place: { file, line: i + 1 }, id: line.frame.id }] : [];
    }),
  );
}
