import { bad, type Result } from '../trouble.ts';
import { readDraft } from './drafts.ts';
import type { Draft } from './entries.ts';
import { type Line, mostLineBytes } from './line.ts';
import { upgraded } from './upgrades.ts';

/** What places a line in its chain: a new entry gets its own. */
const placing = ['v', 'id', 'p', 'lc', 'rec', 'crc', 'key'];
/** More than what places a new line takes, its key with it. */
const placingBytes = 300;

/**
 * A line changed by hand as the draft of a new entry, under the key by which it is known to have been taken in. Not ok, with each reason, where it is no entry
 * this program could write, or where the entry it was changed from `stands` in a copy: taken in beside it, it would count twice.
 */
export function draftFromEdited(
  { text, key }: Extract<Line, { how: 'edited' }>,
  stands: (id: string) => boolean,
): Result<Draft> {
  const record = JSON.parse(text) as Record<string, unknown>;
  const known = upgraded(record);
  if (known === null || known === 'newer') {
    return bad({
      kind: 'wrong entry',
      field: 'v',
      value: record.v,
      expected: 'the number of a version known here',
    });
  }
  if (typeof record.id === 'string' && stands(record.id)) {
    const expected = `an entry that no longer stands: strike it first, with hoveshort record strike entry=${record.id}`;
    return bad({ kind: 'wrong entry', field: 'id', value: record.id, expected });
  }
  const fields = Object.fromEntries(Object.entries(known).filter(([field]) => !placing.includes(field)));
  const bytes = new TextEncoder().encode(JSON.stringify(fields)).length;
  if (bytes > mostLineBytes - placingBytes) {
    const expected = `an entry of at most ${mostLineBytes} bytes, its place in the log included`;
    return bad({ kind: 'wrong entry', field: 'the line', value: bytes, expected });
  }
  return readDraft({ ...fields, key });
}
