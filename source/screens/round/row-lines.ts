import type { Boat } from '../../boat/boat.ts';
import { entryWords } from '../../words/entry-words.ts';
import { PASS_TITLES } from '../../words/round-page.ts';
import { momentWords, sentence } from '../../words/say.ts';
import { sayShortly } from '../../words/troubles.ts';
import { type Field, fieldSpans } from '../field.ts';
import { type Line, line, paragraph, say } from '../lines.ts';
import type { Sight } from '../sight.ts';
import { agoWords } from '../when.ts';
import { cut, pad } from '../width.ts';
import { type RoundPage, type RoundRow, type Saved, savedOf } from './round.ts';
import { groundOf, inHand } from './save-looks.ts';

/** When the round was made. */
export function whenLine({ model }: Sight, page: RoundPage, name: number, columns: number): Line {
  const { field, moment } = page.when;
  const held = moment === null ? 'now, row by row' : momentWords(moment, model.zone, model.now);
  const here = page.at === 0;
  const written = here
    ? typedSpans(field, held, columns - name - 6)
    : [say(moment === null ? held : field.text)];
  const heard = here ? `Now typing when the round was made: ${field.text === '' ? held : field.text}.` : '';
  return { ...named(here, ' ', 'when', name, written), heard };
}

/** One look: what is typed in it, what was saved of it, or what was found last. */
export function rowLine(sight: Sight, page: RoundPage, index: number, name: number, columns: number): Line {
  const row = page.rows[index - 1]!;
  const here = page.at === index;
  const saved = savedOf(page, row);
  const room = columns - name - 6;
  const text = saved ? savedWords(sight, row, saved) : lastWords(sight, row);
  const written = here
    ? typedSpans(row.field, text, room)
    : [say(row.field.text === '' ? cut(text, room) : cut(`${row.field.text}  not saved`, room))];
  const mark = saved?.entries ? '·' : row.told.length > 0 ? '!' : ' ';
  const where = `Row ${index} of ${page.rows.length}, ${PASS_TITLES[row.pass].toLowerCase()}: ${row.look.name}`;
  const typed = row.field.text === '' ? '' : ` Now typing: ${row.field.text}.`;
  return {
    ...named(here, mark, row.look.name, name, written),
    heard: here ? `${where}; ${text}.${typed}` : '',
  };
}

function named(here: boolean, mark: string, name: string, wide: number, written: Line['spans']): Line {
  const tone = here ? 'chosen' : 'plain';
  return line(
    say(`  ${here ? '>' : ' '}${mark}`, tone),
    say(`${pad(cut(name, wide), wide)}  `, tone),
    ...written,
  );
}

/** The field, and while it is empty what stands in for it. */
function typedSpans(field: Field, instead: string, room: number): Line['spans'] {
  const spans = fieldSpans(field, Math.max(8, room));
  return field.text === '' ? [...spans, say(cut(` ${instead}`, Math.max(0, room - 1)))] : spans;
}

function lastWords({ model }: Sight, { look }: RoundRow): string {
  if (look.last === null) return 'not looked at yet';
  return `last ${look.last.found}, ${agoWords(Date.parse(look.last.at), model.now)}`;
}

function savedWords({ boat }: Sight, { look }: RoundRow, { drafts, entries, typed }: Saved): string {
  const what = drafts.map((draft) =>
    ownWords(entryWords(draft, boat.loaded.boat), boat.loaded.boat, look.id),
  );
  return `${what.join('; ')}${typed === '' ? ', unchanged' : ''}, ${entries ? 'saved' : 'saving'}`;
}

/** Without the name the row bears already. */
function ownWords(words: string, boat: Boat, id: string): string {
  const name = [...boat.engines, ...boat.fluids, ...boat.anodes, ...boat.checks].find(
    (one) => one.id === id,
  )?.name;
  return name !== undefined && words.startsWith(`${name}: `) ? words.slice(name.length + 2) : words;
}

/** Under the row in hand: what Enter does or what was wrong, what it should be, what to mind, what can be typed. */
export function handLines(sight: Sight, page: RoundPage, columns: number): Line[] {
  const row = page.rows[page.at - 1];
  const told = (text: string) => paragraph(text, columns - 2, { indent: 6 });
  if (!row) return [...toldLines(page.when, columns), ...told(`such as ${WHEN_EXAMPLE}`)];
  const { look } = row;
  const wants = look.wants === null ? [] : told(sentence(look.wants));
  const last = row.field.text === '' ? [] : told(sentence(lastWords(sight, row)));
  return [
    ...outcomeLines(sight, page, row, columns),
    ...last,
    ...wants,
    ...(look.note === null ? [] : told(look.note)),
    ...told(`such as ${exampleOf(row)}`),
  ];
}

const WHEN_EXAMPLE = '07:40, yesterday 18:00, 3 h ago: for a round read off paper; nothing: now';

function toldLines({ told, insisted }: Pick<RoundRow, 'told' | 'insisted'>, columns: number): Line[] {
  const lines = told.flatMap((trouble) =>
    paragraph(sayShortly(trouble), columns - 2, { indent: 6, tone: 'watch' }),
  );
  return insisted ? [...lines, line(say('      Enter again saves it as it stands.', 'title'))] : lines;
}

function outcomeLines(sight: Sight, page: RoundPage, row: RoundRow, columns: number): Line[] {
  if (row.told.length > 0) return toldLines(row, columns);
  const told = (text: string) => paragraph(text, columns - 2, { indent: 6 });
  const saved = savedOf(page, row);
  if (row.field.text.trim() === '') {
    if (saved) return told('Enter goes on; typed again, it takes the place of what was saved.');
    return 'not' in row.same ? told(sentence(row.same.not)) : told('Enter: seen and unchanged.');
  }
  const ground = groundOf(sight.model, page, saved);
  const read = ground && inHand(row, saved, ground);
  if (!read || 'notice' in read) return [];
  if (read.troubles.length > 0) return read.troubles.flatMap((trouble) => told(sayShortly(trouble)));
  return read.drafts.flatMap((draft) => told(`Enter logs: ${entryWords(draft, sight.boat.loaded.boat)}.`));
}

/** What can be typed in the row. */
function exampleOf({ look, same }: RoundRow): string {
  const like = ('found' in same && (same.found.reading ?? same.found.value)) || '12.5';
  switch (look.kind) {
    case 'engine':
      return `${like}, or +.7 for so much more`;
    case 'fluid':
      return '1/2, full, off, +.2 for a change; with what was poured in and the drip: 1/2 +300ml drops';
    case 'anode':
      return '40 %, 1/2, 35 g, 40 % flakes';
    case 'check':
      return look.unit === null ? 'y, n' : `${like}, or +.2 for a change`;
  }
}
