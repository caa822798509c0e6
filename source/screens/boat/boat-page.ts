import { cleaned } from '../../words/cleaned.ts';
import { apart, type Line, line, say } from '../lines.ts';
import type { Sight } from '../sight.ts';
import { troubleBlock } from '../trouble-page.ts';
import { cut } from '../width.ts';
import { type BoatPage, KIND_NAMES, type Part, partsOf } from './part.ts';

export function boatTitle(sight: Sight, columns: number): Line {
  const name = cleaned(sight.boat.loaded.boat.name);
  return apart([say('  BOAT', 'title'), say(`  what ${name} is made of`)], [say('boat.json  ')], columns);
}

/** What she is made of, by kind, round the part chosen: as much as the window holds. What stood in the way of a change stands under its part. */
export function boatLines(sight: Sight, page: BoatPage, rows: number): Line[] {
  const { columns } = sight.model.size;
  const parts = partsOf(sight.boat.loaded.boat);
  const lines: Line[] = [];
  let chosen = 0;
  for (const [at, part] of parts.entries()) {
    if (part.kind !== parts[at - 1]?.kind) lines.push(line(say(`  ${KIND_NAMES[part.kind][1]}`, 'title')));
    const here = at === page.at;
    if (here) chosen = lines.length;
    const heard = `${at + 1} of ${parts.length}: ${KIND_NAMES[part.kind][0]} ${part.name}.`;
    lines.push({ ...partLine(part, here, columns), heard: here ? heard : '' });
    if (here) lines.push(...troubleBlock(page.told, columns, 4));
  }
  const above = page.told.length > 0 ? 0 : Math.floor(rows / 2);
  const from = Math.max(0, Math.min(lines.length - rows, chosen - above));
  return lines.slice(from, from + rows);
}

function partLine({ kind, id, name }: Part, here: boolean, columns: number): Line {
  const tone = here ? 'chosen' : 'plain';
  const isNone = id === null && name === 'none yet';
  return apart(
    [say(`  ${here ? '>' : ' '} `, tone), say(cut(name, columns - 8), tone)],
    [say(`${id ?? (isNone ? 'a adds one' : KIND_NAMES[kind][0])}  `)],
    columns,
  );
}
