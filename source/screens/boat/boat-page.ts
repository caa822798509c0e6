import { itemFields } from '../../boat/item-fields.ts';
import { sayBeside } from '../../words/answered.ts';
import { cleaned } from '../../words/cleaned.ts';
import { fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import type { Sight } from '../sight.ts';
import { cut, pad } from '../width.ts';
import { askOf, type BoatItemPage, type BoatPage, KIND_NAMES, partsOf } from './boat.ts';

export function boatTitle(sight: Sight, columns: number): Line {
  const name = cleaned(sight.boat.loaded.boat.name);
  return apart([say('  BOAT', 'title'), say(`  what ${name} is made of`)], [say('boat.json  ')], columns);
}

/** What she is made of, by kind, round the item chosen: as much as the window holds. */
export function boatLines(sight: Sight, page: BoatPage, rows: number): Line[] {
  const { columns } = sight.model.size;
  const parts = partsOf(sight.boat.loaded.boat);
  const lines: Line[] = [];
  let chosen = 0;
  for (const [at, part] of parts.entries()) {
    if (part.kind !== parts[at - 1]?.kind) lines.push(line(say(`  ${KIND_NAMES[part.kind][1]}`, 'title')));
    const here = at === page.at;
    if (here) chosen = lines.length;
    const row = apart(
      [
        say(`  ${here ? '>' : ' '} `, here ? 'chosen' : 'plain'),
        say(cut(part.name, columns - 8), here ? 'chosen' : 'plain'),
      ],
      [say(`${part.id ?? 'a adds one'}  `)],
      columns,
    );
    lines.push({
      ...row,
      heard: here ? `${at + 1} of ${parts.length}: ${KIND_NAMES[part.kind][0]} ${part.name}.` : '',
    });
  }
  const from = Math.max(0, Math.min(lines.length - rows, chosen - Math.floor(rows / 2)));
  return lines.slice(from, from + rows);
}

export function boatItemTitle({ kind, id, at, fields }: BoatItemPage, columns: number): Line {
  const [one] = KIND_NAMES[kind];
  const words = id === null ? `ANOTHER ${one.toUpperCase()}` : one.toUpperCase();
  return apart(
    [say(`  ${words}`, 'title'), say(`  ${id ?? ''}`)],
    [say(`${at + 1} of ${fields.length}  `)],
    columns,
  );
}

/** The fields round the one that is typed in, and what that one is. */
export function boatItemLines(sight: Sight, page: BoatItemPage, rows: number): Line[] {
  const { columns } = sight.model.size;
  const fields = itemFields(page.kind);
  const wide = Math.min(34, Math.floor(columns / 2));
  const told = page.saving
    ? [line(say('    saving'))]
    : page.told.length > 0
      ? page.told.flatMap((trouble) =>
          paragraph(sayBeside(trouble), columns - 4, { indent: 4, tone: 'watch' }),
        )
      : paragraph(fields[page.at]!.says, columns - 4, { indent: 4 });
  const room = Math.max(1, rows - told.length - 2);
  const from = Math.max(0, Math.min(fields.length - room, page.at - Math.floor(room / 2)));
  const row = (at: number): Line => {
    const here = at === page.at;
    const field = page.fields[at]!;
    const label = say(
      `  ${here ? '>' : ' '} ${pad(cut(askOf(fields[at]!), wide), wide)}  `,
      here ? 'chosen' : 'plain',
    );
    const text = here ? fieldSpans(field, columns - wide - 8) : [say(cut(field.text, columns - wide - 8))];
    return {
      ...line(label, ...text),
      heard: here ? `Now typing ${askOf(fields[at]!)}: ${field.text || 'nothing'}.` : '',
    };
  };
  const shown = Array.from({ length: Math.min(room, fields.length - from) }, (_, n) => from + n);
  const here = shown.indexOf(page.at);
  return [...shown.slice(0, here + 1).map(row), ...told, BLANK, ...shown.slice(here + 1).map(row)];
}
