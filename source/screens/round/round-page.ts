import type { Pass } from '../../condition/round.ts';
import { cautionsFor } from '../../words/cautions.ts';
import { entryWords } from '../../words/entry-words.ts';
import { STATE_WORDS } from '../../words/reasons.ts';
import { counted, hundred, momentWords } from '../../words/say.ts';
import { sayShortly } from '../../words/troubles.ts';
import { EMPTY, fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, type Span, say } from '../lines.ts';
import type { Sight } from '../sight.ts';
import { agoWords, soonWords } from '../when.ts';
import { cut, pad, widthOf } from '../width.ts';
import { type Batch, enteredAt, type RoundPage, type RoundRow, rowInHand, TIME } from './round.ts';
import { pours, rowDrafts } from './typed-row.ts';

const PASSES: { readonly [P in Pass]: string } = {
  stopped: 'ENGINE STOPPED',
  running: 'ENGINE RUNNING',
  leaving: 'BEFORE LEAVING',
};

export function roundTitle(sight: Sight, page: RoundPage, columns: number): Line {
  return apart(
    [say('  ROUND', 'title'), say(`  ${doneWords(page)}`)],
    [say(`${scoreSoFar(sight, page)}  `)],
    columns,
  );
}

/** The time, the rows by pass with the procedure of the row in hand, and what the round has changed. */
export function roundLines(sight: Sight, page: RoundPage, columns: number): Line[] {
  const passes = [...new Set(page.rows.map(({ pass }) => pass))];
  return [
    ...timeLines(sight, page, columns),
    ...passes.flatMap((pass) => [
      BLANK,
      {
        ...line(say(`  ${PASSES[pass]}`, 'title')),
        heard: passes.length > 0 && handIn(page, pass) ? PASSES[pass] : '',
      },
      ...page.rows.flatMap((row, index) => (row.pass === pass ? rowLines(sight, page, index, columns) : [])),
    ]),
    BLANK,
    ...endLines(sight, page, columns),
  ];
}

/** The first line shown, so that all of what is in hand is in sight where there is room, and its beginning where there is not. */
export function roundHand(lines: readonly Line[], rows: number): number {
  const marked = lines.flatMap(({ stop }, index) => (stop ? [index] : []));
  const first = marked[0] ?? 0;
  const many = marked.length;
  return Math.max(0, many > rows - 2 ? first - 1 : first - Math.floor((rows - many) / 2));
}

/** Lines of the row in hand carry a stop, so that they are kept in sight. */
function inHand(lines: readonly Line[]): Line[] {
  const stop = { key: 'hand', part: 'round', opens: { open: 'answer' } } as const;
  return lines.map((one) => ({ ...one, stop }));
}

function timeLines(sight: Sight, page: RoundPage, columns: number): Line[] {
  const { now, zone } = sight.model;
  const when = page.when === null ? 'now, by the clock' : soonWords(page.when, now, zone);
  if (page.at >= 0) {
    return page.when === null ? [] : [{ ...line(say(`    looked at ${when}`)), heard: `Looked at ${when}.` }];
  }
  const field = page.fields[TIME] ?? EMPTY;
  const typing: Line = {
    ...line(
      say('  > looked at  ', 'chosen'),
      ...fieldSpans(field, columns - 20),
      say(field.text === '' ? ` ${when}` : ''),
    ),
    heard: `Now typing when all of it was looked at: ${field.text || when}.`,
  };
  const such = 'for a round read off paper, such as 07:40, yesterday 18:00, 3 h ago';
  return inHand([typing, ...paragraph(such, columns - 2, { indent: 4 }), ...toldLines(page, columns)]);
}

function rowLines(sight: Sight, page: RoundPage, index: number, columns: number): Line[] {
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
  const cautions = pours(row, text) ? cautionsFor('fluid') : [];
  const facts = [...(wants === null ? [] : [wants]), ...(minutes === null ? [] : [`${minutes} min`])];
  return [
    ...(facts.length === 0 ? [] : [say(facts.join('; '))]),
    ...(note === null ? [] : [say(note)]),
    ...cautions.map((caution) => say(caution)),
    say(`type ${suchAs(look)}`),
  ];
}

function suchAs({ kind, unit }: RoundRow['look']): string {
  switch (kind) {
    case 'engine':
      return '3412.6, or +1.5 more than last time';
    case 'fluid':
      return '1.2, -.1, 1/2, full, low, off; 1/2 +300ml drops: half, 300 ml poured in, drops form (dry, wet, drops, falls)';
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
    return `${look.last.found}, ${agoWords(Date.parse(look.last.at), now)}`;
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
    return [say(`NOT SAVED: ${failed.map(sayShortly).join(' ')}`, 'watch'), say('Enter tries again.')];
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

function toldLines(page: RoundPage, columns: number): Line[] {
  return toldSpans(page).flatMap(({ text, tone }) => paragraph(text, columns - 2, { indent: 4, tone }));
}

/** What the round has changed, and what was not looked at: the whole answer where all of it is done. */
function endLines(sight: Sight, page: RoundPage, columns: number): Line[] {
  const here = rowInHand(page) === null;
  const left = page.rows.filter(({ look }) => !enteredAt(page, look.id));
  const title = left.length === 0 ? 'ROUND DONE' : here ? 'END OF THE ROUND' : 'SO FAR';
  const heard = (text: string) => (here || left.length === 0 ? text : '');
  const told = (text: string) =>
    paragraph(text, columns - 2, { indent: 2 }).map((one, index) => ({
      ...one,
      heard: index === 0 ? heard(text) : '',
    }));
  const lines = [
    { ...line(say(`  ${here ? '> ' : ''}${title}`, here ? 'chosen' : 'title')), heard: heard(title) },
    ...told(`${doneWords(page)}; ${scoreSoFar(sight, page)}.`),
    ...changedStates(page).flatMap(told),
    ...(here && left.length > 0
      ? told(`Not looked at: ${left.map(({ look }) => look.name).join(', ')}.`)
      : []),
    ...(here ? told('Enter or Esc: back to the board. Up: back to the rows.') : []),
  ];
  return here ? inHand(lines) : lines;
}

function doneWords(page: RoundPage): string {
  const done = page.rows.filter(({ look }) => enteredAt(page, look.id)).length;
  return `${done} of ${page.rows.length} entered`;
}

function scoreSoFar({ boat }: Sight, { began, latest, batches }: RoundPage): string {
  if (!began || !latest) return 'boat: working';
  const waits = boat.working || batches.some(({ score }) => score === null);
  const [first, last] = [began.score.boat, latest.score.boat];
  const said =
    hundred(first) === hundred(last)
      ? `boat ${hundred(last)}`
      : `boat ${Math.floor(first + 1e-9)} -> ${hundred(last)}`;
  return waits ? `${said}, working` : said;
}

/** Every item whose state is another than when the round began. */
function changedStates({ began, latest }: RoundPage): string[] {
  if (!began || !latest) return [];
  const before = new Map(began.items.map(({ id, state }) => [id, state]));
  const changed = latest.items.flatMap(({ id, name, state }) => {
    const was = before.get(id);
    return was === undefined || was === state
      ? []
      : [`${name}: ${STATE_WORDS[was]} -> ${STATE_WORDS[state]}`];
  });
  const verdict = began.verdict === latest.verdict ? [] : [`Verdict: ${began.verdict} -> ${latest.verdict}.`];
  return [
    ...verdict,
    ...(changed.length === 0
      ? []
      : [`${counted(changed.length, 'state', 'states')} changed: ${changed.join('; ')}.`]),
  ];
}

function handIn({ rows, at }: RoundPage, pass: Pass): boolean {
  return rows[at]?.pass === pass;
}
