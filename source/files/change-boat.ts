import path from 'node:path';
import { type BoatChange, changedMeanwhile, changedText } from '../boat/change.ts';
import { readBoat } from '../boat/read.ts';
import { bad, good, type Result } from '../trouble.ts';
import type { Disk } from './disk.ts';
import { readTextFile } from './read-text.ts';
import { replaceFile } from './replace.ts';

/** Changes boat.json as it now stands on the disk. What would be in trouble is not written, nor what was typed over something else (`was`); the file before it is kept as boat.json.bak. */
export function changeBoat(disk: Disk, folder: string, change: BoatChange, mostBytes: number): Result<null> {
  const file = path.join(folder, 'boat.json');
  const text = readTextFile(disk, file, mostBytes);
  if (!text.ok) return text;
  const meanwhile = changedMeanwhile(text.value, change);
  if (meanwhile) return bad(meanwhile);
  const changed = changedText(text.value, change);
  const read = readBoat(changed, 'boat.json');
  if (!read.ok) return read;
  const failed = replaceFile(disk, file, new TextEncoder().encode(changed), { backup: true });
  return failed ? bad({ kind: 'cannot write', file: failed.file, code: failed.code }) : good(null);
}
