import type { PartField } from '../../boat/part-fields.ts';
import { isList } from '../../boat/parts.ts';
import { sayBeside } from '../../words/answered.ts';
import { meaningOf, usualWords } from '../../words/part-meaning.ts';
import type { Leg } from '../../words/typed-leg.ts';
import { fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import type { Size } from '../model.ts';
import { troubleBlock } from '../trouble-page.ts';
import { cut, pad, widthOf } from '../width.ts';
import { legNumber } from './legs.ts';
import { type BoatItemPage, KIND_NAMES, type Read, type Wrong } from './part.ts';
import { idFor, readRows } from './typed-part.ts';

/** Windows with fewer rows show what a line is only until something is to be said of what is typed. */
const ROOMY = 12;

export function boatItemTitle(page: BoatItemPage, columns: number): Line {
  const [one] = KIND_NAMES[page.kind];
  const words = page.how === 'add' ? `ANOTHER ${one.toUpperCase()}` : one.toUpperCase();
  return apart(
    [say(`  ${words}`, 'title'), say(`  ${isNamed(page) ? (idFor(page) ?? '') : ''}`)],
    [say(`${page.at + 1} of ${page.fields.length}  `)],
    columns,
  );
}

/** The id of one that is added is made of its name. */
function isNamed({ how, rows, fields }: BoatItemPage): boolean {
  return how === 'change' || fields[rows.findIndex(({ path }) => path[0] === 'name')]?.text.trim() !== '';
}

/** The rows round the one that is typed in; under that one what it is taken for or what is wrong, and what it is. */
export function boatItemLines(page: BoatItemPage, { columns }: Size, rows: number): Line[] {
  const field: Line[] = isLong(page, columns)
    ? [{ ...line(say('    '), ...fieldSpans(page.fields[page.at]!, columns - 6)), heard: '' }]
    : [];
  const under = [...field, ...underLines(page, columns, rows)].slice(0, Math.max(1, rows - 2));
  const room = Math.max(1, rows - under.length - 1);
  const from = Math.max(0, Math.min(page.fields.length - room, page.at - Math.floor(room / 2)));
  const last = Math.min(page.fields.length, from + room);
  const shown = (first: number, end: number) =>
    Array.from({ length: Math.max(0, end - first) }, (_, n) => rowLine(page, first + n, columns));
  const end = last === page.fields.length ? paragraph(leftOut(page), columns - 4, { indent: 4 }) : [];
  return [...shown(from, page.at + 1), ...under, BLANK, ...shown(page.at + 1, last), ...end];
}

function rowLine(page: BoatItemPage, at: number, columns: number): Line {
  const here = at === page.at;
  const wide = labelWidth(columns);
  const field = page.fields[at]!;
  const isWrong = shownWrong(page).some((wrong) => wrong.at === at);
  const mark = here ? '>' : isWrong ? '!' : ' ';
  const tone = here ? 'chosen' : isWrong ? 'watch' : 'plain';
  const asks = askOf(page.rows, at);
  const room = fieldWidth(columns);
  const isBelow = here && isLong(page, columns);
  return {
    ...line(
      say(`  ${mark} ${pad(cut(asks, wide), wide)}  `, tone),
      ...(here && !isBelow ? fieldSpans(field, room) : [say(isBelow ? '' : cut(field.text, room))]),
    ),
    heard: here ? `Now typing ${asks}: ${field.text || 'nothing'}.` : '',
  };
}

function labelWidth(columns: number): number {
  return Math.min(32, Math.floor(columns * 0.42));
}

function fieldWidth(columns: number): number {
  return columns - labelWidth(columns) - 8;
}

/** What is longer than the room beside its name is typed on a line of its own. */
function isLong(page: BoatItemPage, columns: number): boolean {
  return widthOf(page.fields[page.at]!.text) > fieldWidth(columns) - 2;
}

function underLines(page: BoatItemPage, columns: number, rows: number): Line[] {
  if (page.saving) return [line(say('    saving'))];
  if (page.told.length > 0) return troubleBlock(page.told, columns, 4);
  const outcome = outcomeLines(page, columns);
  return outcome.length > 0 && rows < ROOMY ? outcome : [...outcome, ...saysLines(page, columns)];
}

function outcomeLines(page: BoatItemPage, columns: number): Line[] {
  const wrong = shownWrong(page);
  const told = wrong.find(({ at }) => at === page.at) ?? wrong.find(({ crosses }) => crosses);
  if (told) return paragraph(sayBeside(told.trouble), columns - 4, { indent: 4, tone: 'watch' });
  const meaning = takenAs(page);
  return meaning === null ? [] : paragraph(`taken as: ${meaning}`, columns - 4, { indent: 4 });
}

/** What is yet to be filled in is told of one that is added only once it was to be saved. */
function shownWrong({ wrong, asked, how }: BoatItemPage): readonly Wrong[] {
  return wrong.filter(({ missing }) => !missing || asked || how === 'change');
}

function takenAs(page: BoatItemPage): string | null {
  const reads = readRows(page);
  const { row, value } = reads[page.at]!;
  if (value === undefined) return null;
  const begins = row.holds.is === 'leg' ? beginningAt(reads, page.at) : null;
  return meaningOf(value, row, { boat: page.of, typed: page.fields[page.at]!.text, begins });
}

/** Where the leg in a row begins: where the one before ends, or where the first is said to. */
function beginningAt(reads: readonly Read[], at: number): readonly [number, number] | null {
  const before = reads
    .slice(0, at)
    .findLast(({ row, value }) => row.holds.is === 'leg' && value !== undefined);
  if (before) return (before.value as Leg).to;
  const from = reads.find(({ row }) => row.path[0] === 'legs' && row.holds.is === 'position');
  return (from?.value as readonly [number, number] | undefined) ?? null;
}

/** What the row is, with its whole name where that was cut, and the default where there is one. */
function saysLines(page: BoatItemPage, columns: number): Line[] {
  const row = page.rows[page.at]!;
  const asks = askOf(page.rows, page.at);
  const name = widthOf(asks) > labelWidth(columns) ? `${asks} ` : '';
  const usual = usualWords(row);
  return paragraph(`${name}${row.says}${usual === null ? '' : ` ${usual}`}`, columns - 4, { indent: 4 });
}

function leftOut({ kind }: BoatItemPage): string {
  const errors = kind === 'limits' || kind === 'alone' ? 'how far forecasts stray (forecastError), ' : '';
  const id = isList(kind) ? 'its id, ' : '';
  return `Only in the file (Esc, then E): ${errors}${id}fields of your own.`;
}

const CALLED: { readonly [path: string]: string } = {
  'loss.perEngineHour': 'loss running',
  'loss.perDay': 'loss lying',
};

/** How a row is called where it is typed. */
export function askOf(rows: readonly PartField[], at: number): string {
  const { path, holds } = rows[at]!;
  if (holds.is === 'leg') return `leg ${legNumber(rows, at)}, to`;
  if (holds.is === 'leg sectors') return `leg ${legNumber(rows, at)}, sectors`;
  if (path[0] === 'legs') return 'from';
  const isError = holds.is === 'bad day' && holds.usual === null;
  const isSpread = path.at(-1) === 'mean' || (holds.is === 'bad day' && !isError);
  const name = called(isSpread ? path.slice(0, -1) : path);
  if (!isSpread) return isError ? `${name}: on a bad day?` : name;
  if (path.at(-1) === 'mean') return `${name}: usual?`;
  return path.at(-1) === 'wide' ? `${name}: leaking badly?` : `${name}: on a bad day?`;
}

function called(path: PartField['path']): string {
  const known = CALLED[path.join('.')];
  return (
    known ??
    path.map((word) => String(word).replace(/[A-Z]/gu, (letter) => ` ${letter.toLowerCase()}`)).join(', ')
  );
}
