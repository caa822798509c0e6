import { closedHuntParts } from '../../words/found-parts.ts';
import { CHANCES_ONLY } from '../../words/trace-parts.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import { nameOf, type Sight } from '../sight.ts';
import { type FoundPage, toldOf } from './trace.ts';

export function foundTitle(sight: Sight, { id, found }: FoundPage, columns: number): Line {
  const told = toldOf(sight.model, id)?.found ?? [];
  const nth = told.findIndex(({ at }) => at === found);
  const title = told[nth]?.table.title ?? '';
  return apart(
    [say(`  ${nameOf(sight, id).toLocaleUpperCase()}`, 'title'), say(`  ${title}: found before`)],
    told.length > 1 && nth >= 0 ? [say(`${nth + 1} of ${told.length}, the newest first  `)] : [],
    columns,
  );
}

/** A closed hunt: what was noticed first, what was looked for and thought, the work, what came after. */
export function foundLines(sight: Sight, { id, found }: FoundPage, columns: number): Line[] {
  const told = toldOf(sight.model, id);
  const hunt = told?.closed;
  if (hunt?.at !== found) {
    const gone = told?.found.every(({ at }) => at !== found) ?? false;
    return [line(say(gone ? '  The log no longer has this hunt as closed.' : '  The log is being read.'))];
  }
  const [first, ...parts] = closedHuntParts(hunt, sight.model.zone).map(({ title, lines }) => [
    line(say(`  ${title}`, 'title')),
    ...lines.flatMap((text) => paragraph(text, columns - 2, { indent: 4 })),
  ]);
  return [
    ...first!,
    ...parts.flatMap((lines) => [BLANK, ...lines]),
    BLANK,
    ...paragraph(CHANCES_ONLY, columns - 2, { indent: 2 }),
  ];
}
