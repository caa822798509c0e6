import { draftFromEdited } from '../logbook/accepted.ts';
import type { Draft } from '../logbook/entries.ts';
import type { Line } from '../logbook/line.ts';
import { foldLog } from '../logbook/order.ts';
import type { Accepted } from '../outside.ts';
import { assert, bad, good, type Place, type Result } from '../trouble.ts';
import { append } from './append.ts';
import { asLogFile } from './log-file.ts';
import { refresh, type Shelf } from './shelf.ts';

/**
 * Takes every line that was changed by hand, and is a sound entry, in again as a new entry of this laptop. The lines stay where they are. Done again, it
 * takes none twice.
 */
export function acceptEdited(shelf: Shelf): Result<Accepted> {
  refresh(shelf);
  const standing = new Set(foldLog(shelf.files.map(asLogFile)).entries.map(({ id }) => id));
  const drafts = new Map<string | undefined, { readonly place: Place; readonly draft: Draft }>();
  const refused: Accepted['refused'][number][] = [];
  for (const { line, place } of editedLines(shelf)) {
    const draft = draftFromEdited(line, (id) => standing.has(id));
    if (draft.ok) drafts.set(line.key, { place, draft: draft.value });
    else refused.push({ place, text: line.text, troubles: draft.troubles });
  }
  const saved = append(
    shelf,
    [...drafts.values()].map(({ draft }) => draft),
  );
  if (!saved.ok) return bad(...saved.troubles);
  const taken = saved.value.map((entry) => {
    const from = drafts.get(entry.key);
    assert(from, 'only what was asked for is saved');
    return { place: from.place, entry };
  });
  return good({ taken, refused });
}

/** Those not yet taken in. */
function editedLines(shelf: Shelf): { line: Extract<Line, { how: 'edited' }>; place: Place }[] {
  return shelf.files
    .map(asLogFile)
    .flatMap(({ name, lines }) =>
      lines.flatMap((line, i) =>
        line.how === 'edited' && !shelf.keys.has(line.key)
          ? [{ line, place: { file: name, line: i + 1 } }]
          : [],
      ),
    );
}
