import { cautionsFor, passCaution } from '../../words/cautions.ts';
import { entryWords } from '../../words/entry-words.ts';
import { momentWords } from '../../words/say.ts';
import { sayNotSaved, sayShortly } from '../../words/troubles.ts';
import { EMPTY, fieldSpans } from '../field.ts';
import { type Line, line, paragraph, type Span, say } from '../lines.ts';
import type { Sight } from '../sight.ts';
import { agoWords } from '../when.ts';
import { cut, pad, widthOf } from '../width.ts';
import { type Batch, enteredAt, type RoundPage, type RoundRow } from './round.ts';
import { pours, rowDrafts } from './typed-row.ts';

/** One row: what was found or typed; in hand also what it should be shown, what would be logged, what to mind. */
export function rowLines(sight: Sight, page: RoundPage, index: number, columns: number): Line[] {
  const row = page.rows[index]!;
  const { id, name } = row.look;
  const here = index === page.at;
  const wide =
    Math.min(Math.floor(columns * 0.45), Math.max(...page.rows.map(({ look }) => widthOf(look.name)))) + 2;
  const room = columns - wide - 4;
  const label = say(`  ${here ? '>' : ' '} ${pad(cut(name, wide - 2), wide)}`, here ? 'chosen' : 'plain');
  const field = page.fields[id] ?? EMPTY;
  const state = stateWords(sight, page, row);
  if (!here) {
    const words = field.text === '' ? state : `${field.text}  not saved`;
    const tone = page.failed[id] ? 'watch' : 'plain';
    return [
      { ...line(label, say(cut(words, room), tone)), heard: page.failed[id] ? `${name}: ${words}.` : '' },
    ];
  }
  const behind = field.text === '' ? state : `  ${state}`;
  const typed = fieldSpans(field, Math.max(8, room - widthOf(behind)));
  const used = typed.reduce((sum, { text }) => sum + widthOf(text), 0);
  const spans: Span[] = [label, ...typed, say(cut(behind, Math.max(0, room - used)))];
  const heard = `${index + 1} of ${page.rows.length}: ${name}, ${state}.${field.text === '' ? '' : ` Now typing ${field.text}.`}`;
  return inHand([
    { ...line(...spans), heard },
    ...[...outcome(sight, page, row), ...noteLines(row, field.text)].flatMap(({ text, tone }) =>
      paragraph(text, columns - 2, { indent: 6, tone }),
    ),
  ]);
}

/** What it should be shown, what to type, how long it takes, what to mind. */
function noteLines(row: RoundRow, text: string): Span[] {
  const { look } = row;
  const { wants, minutes, note } = look;
  const cautions = cautionsAt(row, text);
  const facts = [...(wants === null ? [] : [wants]), ...(minutes === null ? [] : [`${minutes} min`])];
  return [
    ...(facts.length === 0 ? [] : [say(facts.join('; '))]),
    ...(note === null ? [] : [say(note)]),
    ...cautions.map((caution) => say(caution)),
    say(`type ${suchAs(look)}`),
  ];
}

/** By the engine: fluids and anodes with it stopped, all that is looked at with it running. */
function cautionsAt(row: RoundRow, text: string): readonly string[] {
  if (pours(row, text)) return cautionsFor('fluid');
  const { kind } = row.look;
  const isAtEngine = row.pass === 'running' || kind === 'fluid' || kind === 'anode';
  const caution = isAtEngine ? passCaution(row.pass) : null;
  return caution === null ? [] : [caution];
}

function suchAs({ kind, unit }: RoundRow['look']): string {
  switch (kind) {
    case 'engine':
      return '3412.6, or +1.5 more than last time';
    case 'fluid':
      return `${unit}: 1.2, -.1, 1/2, full, low, off; 1/2 +300ml drops: half, 300 ml poured in, drops form (dry, wet, drops, falls)`;
    case 'anode':
      return 'what is left: 60%, 1/2, -10%';
    case 'check':
      return unit === null
        ? 'y or n'
        : `a number${unit === '' ? '' : ` of ${unit}`}, or -.1 less than last time`;
  }
}

/** What was found last, or how it was entered. */
function stateWords(sight: Sight, page: RoundPage, { look }: RoundRow): string {
  const { zone, now } = sight.model;
  const found = enteredAt(page, look.id);
  if (!found) {
    if (look.last === null) return 'never looked at';
    return `${look.last.found}, ${agoWords(Date.parse(look.last.at), now, zone)}`;
  }
  const { batch, entered } = found;
  const said = entered.drafts.map((draft) => afterName(entryWords(draft, page.ground.boat), look.name));
  const when = momentWords(batch.at, zone).split(' ').at(-1)!;
  const stored = entered.ids === null ? 'saving' : `saved ${when}`;
  return `${stored}, ${scoreWords(batch)}: ${said.join(', ')}`;
}

/** The name stands before it already. */
function afterName(words: string, name: string): string {
  const start = name.replace(/, hours by the meter$/u, '');
  return words.toLocaleLowerCase().startsWith(`${start.toLocaleLowerCase()}: `)
    ? words.slice(start.length + 2)
    : words;
}

/** What it did to the score, together with all that was entered at once. */
function scoreWords({ score, looks }: Batch): string {
  if (score === null) return 'working';
  if (score === 'with next') return 'counted with the next';
  const [before, after] = [Math.floor(score.before + 1e-9), Math.floor(score.after + 1e-9)];
  const together = looks.length > 1 ? ` by all ${looks.length}` : '';
  return before === after ? `boat still ${after}` : `boat ${before} -> ${after}${together}`;
}

/** What Enter would log, what was wrong with it, or what stood in the way. */
function outcome(sight: Sight, page: RoundPage, row: RoundRow): Span[] {
  const { id } = row.look;
  const failed = page.failed[id];
  if (failed)
    return [
      say(`${sayNotSaved(failed)}.`, 'watch'),
      say('Enter tries again; write it on paper until it is saved.'),
    ];
  if (page.told) return toldSpans(page);
  const text = (page.fields[id]?.text ?? '').trim();
  const before = enteredAt(page, id);
  if (text === '' && before)
    return [say('Entered. What is typed here takes its place; u strikes what was entered last.')];
  const read = rowDrafts(row, text, page, sight.model);
  if (read === null) return [say('Nothing to be unchanged from: type what you find.')];
  if (!read.ok) return read.troubles.map((trouble) => say(sayShortly(trouble)));
  const said = read.value.map((draft) => entryWords(draft, page.ground.boat)).join('; ');
  return [say(text === '' ? `Enter: seen and unchanged, logged as ${said}.` : `Enter logs: ${said}.`)];
}

function toldSpans({ told }: RoundPage): Span[] {
  if (!told) return [];
  const wrong = told.troubles.map((trouble) => say(sayShortly(trouble), 'watch'));
  return told.insisted ? [...wrong, say('Enter again saves it as it stands.', 'title')] : wrong;
}

/** What was doubted or wrong in what was entered last. */
export function toldLines(page: RoundPage, columns: number): Line[] {
  return toldSpans(page).flatMap(({ text, tone }) => paragraph(text, columns - 2, { indent: 4, tone }));
}

/** Lines of the row in hand carry a stop, so that they are kept in sight. */
export function inHand(lines: readonly Line[]): Line[] {
  const stop = { key: 'hand', part: 'round', opens: { open: 'answer' } } as const;
  return lines.map((one) => ({ ...one, stop }));
}
