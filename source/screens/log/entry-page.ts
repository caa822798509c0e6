import { type Entry, itemField } from '../../logbook/entries.ts';
import { momentWords } from '../../words/say.ts';
import { sayTrouble } from '../../words/troubles.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import { nameOf, type Sight } from '../sight.ts';
import { pad, widthOf } from '../width.ts';
import { wordsOf } from './log-page.ts';
import { type EntryRow, rowNamed, strikesEver, wrongWith } from './rows.ts';

/** All of one row of the log. */
export interface EntryPage {
  readonly page: 'entry';
  readonly from: number;
  /** What names the row. */
  readonly row: string;
}

export function entryTitle(sight: Sight, { row }: EntryPage, columns: number): Line {
  const found = rowNamed(sight.boat.loaded, row);
  if (found?.is !== 'entry') return line(say('  OF THE LOG', 'title'));
  const state = found.struck ? [say('STRUCK  ', 'watch')] : [];
  return apart([say('  ENTRY', 'title'), say(`  ${found.entry.id}`)], state, columns);
}

/** What it says, when it happened and was typed and by whom, its fields as they stand in the file, its strikes, what is wrong with it. */
export function entryLines(sight: Sight, { row }: EntryPage, columns: number): Line[] {
  const found = rowNamed(sight.boat.loaded, row);
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  if (found === null) return told('This is in the log no more: it was read again.');
  if (found.is === 'wrong') return sayTrouble(found.trouble).split('\n').flatMap(told);
  const wrong = wrongWith(sight.boat.loaded, found.entry);
  const history = strikeWords(sight, found);
  return [
    ...told(`${wordsOf(sight, found)}.`),
    BLANK,
    ...table(placeOf(sight, found), columns),
    ...section(
      'AS IT WAS RECORDED, in litres, knots, metres and UTC',
      table(recorded(sight, found), columns),
    ),
    ...section('STRUCK AND RESTORED', history.flatMap(told)),
    ...section('WRONG WITH IT', wrong === null ? [] : told(wrong)),
  ];
}

function section(title: string, lines: readonly Line[]): Line[] {
  return lines.length === 0 ? [] : [BLANK, line(say(`  ${title}`, 'title')), ...lines];
}

function table(rows: readonly (readonly [string, string])[], columns: number): Line[] {
  const wide = Math.max(...rows.map(([name]) => widthOf(name))) + 2;
  return rows.flatMap(([name, value]) =>
    paragraph(value, Math.max(8, columns - 4 - wide)).map((one, index) =>
      line(say(`    ${pad(index === 0 ? name : '', wide)}`), ...one.spans),
    ),
  );
}

function placeOf(sight: Sight, { entry }: EntryRow): [string, string][] {
  const moment = (at: string) => momentWords(Date.parse(at), sight.model.zone);
  return [
    ['happened', moment(entry.at)],
    ['typed', moment(entry.rec)],
    ['by', entry.by ?? 'not said'],
    ['written by', `${entry.writer}, its line ${entry.n}`],
    ['count', `${entry.lc}: what was known then has a lower one`],
  ];
}

const TOLD = new Set(['id', 'writer', 'n', 'lc', 'by']);

/** Every field but those told above. */
function recorded(sight: Sight, { entry }: EntryRow): [string, string][] {
  const item = itemField[entry.kind];
  return Object.entries(entry)
    .filter(([field]) => !TOLD.has(field))
    .map(([field, value]) => {
      const text = typeof value === 'string' ? value : JSON.stringify(value);
      return [field, field === item ? named(sight, text) : text];
    });
}

function named(sight: Sight, id: string): string {
  const name = nameOf(sight, id);
  return name === id ? id : `${id} (${name})`;
}

/** Who struck it, when and why; and of a strike that was struck, the same. */
function strikeWords(sight: Sight, { entry, struck }: EntryRow): string[] {
  const said = (act: string, { by, rec, why }: Extract<Entry, { kind: 'strike' }>) =>
    `${act} ${momentWords(Date.parse(rec), sight.model.zone)}${by === undefined ? '' : ` by ${by}`}${why === undefined ? ', no reason given' : `, because ${why}`}.`;
  const { loaded } = sight.boat;
  const words = strikesEver(loaded, entry).flatMap((strike) => [
    said('Struck', strike.entry),
    ...(strike.struck ? strikesEver(loaded, strike.entry).map((one) => said('Restored', one.entry)) : []),
  ]);
  return words.length === 0 && struck ? ['Struck.'] : words;
}
