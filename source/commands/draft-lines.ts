import { readSyntax } from '../boat/syntax.ts';
import { readDraft } from '../logbook/drafts.ts';
import { mostLineBytes } from '../logbook/line.ts';
import { bad, type Trouble } from '../trouble.ts';
import type { Asked } from '../words/doubts.ts';

const INPUT = 'standard input';
/** Nothing is taken by then, and who sees so many looks at the file. */
const MOST_TROUBLES = 10_000;

/** Bare entries from JSON lines, and every trouble with its line number; blank lines are passed over. */
export function draftsFromLines(text: string): {
  readonly asked: readonly Asked[];
  readonly troubles: readonly Trouble[];
} {
  const asked: Asked[] = [];
  const troubles: Trouble[] = [];
  let line = 0;
  // Not all lines at once: a file of nothing but line ends would take ten times its length.
  for (let start = text.startsWith('\ufeff') ? 1 : 0, stop = 0; stop < text.length; start = stop + 1) {
    stop = text.indexOf('\n', start);
    if (stop < 0) stop = text.length;
    line += 1;
    const written = text.slice(start, stop);
    if (written.trim() === '') continue;
    const read = readLine(written, line);
    if (read.ok) asked.push({ draft: read.value, line });
    else troubles.push(...read.troubles);
    if (troubles.length > MOST_TROUBLES) break;
  }
  return { asked, troubles };
}

function readLine(written: string, line: number) {
  if (written.length > mostLineBytes) {
    const expected = `an entry of at most ${mostLineBytes} bytes`;
    return bad({ kind: 'wrong entry', line, field: 'text', value: written.length, expected });
  }
  try {
    return readDraft(JSON.parse(written), line);
  } catch {
    const fault = readSyntax(written).faults[0];
    const from = fault?.offset ?? 0;
    const excerpt = { text: written, from, to: from + (fault?.length ?? 1) };
    const place = { file: INPUT, line, excerpt };
    return bad({ kind: 'not json', place, what: fault?.what ?? 'symbol' });
  }
}
