import { about } from '../../logbook/about.ts';
import { type Entry, type EntryKind, itemField } from '../../logbook/entries.ts';
import { type Listed, newestFirst } from '../../logbook/newest-first.ts';
import type { Trouble } from '../../trouble.ts';
import { entryWords } from '../../words/entry-words.ts';
import { sayShortly } from '../../words/troubles.ts';
import type { Field } from '../field.ts';
import type { Loaded } from '../model.ts';

/** What is listed of the log. */
export interface Filter {
  readonly kind: EntryKind | null;
  /** The id of an item. */
  readonly item: string | null;
  /** Only what is wrong: lines that cannot be used, and entries left out of the sums. */
  readonly wrong: boolean;
  /** What is searched for. */
  readonly find: Field;
}

/** One thing listed: an entry, or what is wrong with a file or a line, which is no entry. */
export type Row = ({ readonly is: 'entry' } & Listed) | { readonly is: 'wrong'; readonly trouble: Trouble };

/** The whole log, newest first, or what of it passes the filter; with `wrong` first the lines that are no entries. */
export function rowsOf(loaded: Loaded, filter: Filter): readonly Row[] {
  const book = bookOf(loaded);
  const key = JSON.stringify([filter.kind, filter.item, filter.wrong, filter.find.text]);
  if (book.last?.key === key) return book.last.rows;
  const rows = rowsBy(book, loaded, filter);
  book.last = { key, rows };
  return rows;
}

/** What names a row, whatever is written to the log meanwhile. */
export function keyOf(row: Row): string {
  return row.is === 'entry' ? row.entry.id : JSON.stringify(row.trouble);
}

/** Why an entry is left out of the sums, or in doubt; null where nothing is wrong with it. */
export function wrongWith(loaded: Loaded, { id }: Entry): string | null {
  const doubt = bookOf(loaded).doubts.get(id);
  return doubt ? sayShortly(doubt) : null;
}

/** The lines of the log that cannot be used, and what else is wrong with its files. */
export function damageIn({ troubles }: Loaded): readonly Trouble[] {
  return troubles.filter(({ kind }) => OF_THE_LOG.has(kind));
}

const OF_THE_LOG: ReadonlySet<Trouble['kind']> = new Set([
  'line cut off',
  'line damaged',
  'line edited',
  'lines missing',
  'chain broken',
  'line out of place',
  'same id twice',
  'count leap',
  'more damage',
  'newer entries',
  'no log',
  'stray file',
  'file too large',
  'not a plain file',
  'cannot read',
  'disk error',
]);

/** The item an entry is about; null where it is about none. */
export function itemIn(entry: Entry): string | null {
  const field = itemField[entry.kind];
  const id = field === undefined ? undefined : (entry as unknown as Record<string, unknown>)[field];
  return typeof id === 'string' ? id : null;
}

/** The strikes that withdraw an entry, oldest first: two laptops may each have struck it, and of several lines with one id a strike may name the id alone. */
export function strikesOf({ entries }: Loaded, { id }: Entry): readonly (Entry & { kind: 'strike' })[] {
  const [bare] = id.split(':');
  return entries.filter(
    (entry) => entry.kind === 'strike' && (entry.entry === id || entry.entry === bare),
  ) as (Entry & { kind: 'strike' })[];
}

/** The entry with this id, standing or struck. */
export function entryOf({ entries, struck }: Loaded, id: string): Listed | null {
  const standing = entries.find((entry) => entry.id === id);
  if (standing) return { entry: standing, struck: false };
  const withdrawn = struck.find((entry) => entry.id === id);
  return withdrawn ? { entry: withdrawn, struck: true } : null;
}

interface Book {
  readonly rows: readonly Row[];
  readonly doubts: ReadonlyMap<string, Trouble>;
  /** What is searched in, by entry. */
  readonly texts: Map<Entry, string>;
  last: { readonly key: string; readonly rows: readonly Row[] } | null;
}

/** A decade of entries is put in order once a reading of the folder, and worded once a search. */
const books = new WeakMap<Loaded, Book>();

function bookOf(loaded: Loaded): Book {
  const known = books.get(loaded);
  if (known) return known;
  const doubts = [...loaded.troubles, ...loaded.condition.troubles].flatMap((trouble): [string, Trouble][] =>
    'entry' in trouble ? [[trouble.entry, trouble]] : [],
  );
  const rows = newestFirst(loaded).map((listed): Row => ({ is: 'entry', ...listed }));
  const book: Book = { rows, doubts: new Map(doubts), texts: new Map(), last: null };
  books.set(loaded, book);
  return book;
}

function rowsBy(book: Book, loaded: Loaded, { kind, item, wrong, find }: Filter): readonly Row[] {
  const words = find.text
    .toLocaleLowerCase()
    .split(/\s+/u)
    .filter((word) => word !== '');
  if (kind === null && item === null && !wrong && words.length === 0) return book.rows;
  const damage = wrong ? damageIn(loaded).map((trouble): Row => ({ is: 'wrong', trouble })) : [];
  const passes = ({ entry }: Listed) =>
    (kind === null || entry.kind === kind) &&
    (item === null || about(entry, item)) &&
    (!wrong || book.doubts.has(entry.id)) &&
    (words.length === 0 || words.every((word) => textOf(book, loaded, entry).includes(word)));
  return [...damage, ...book.rows.filter((row) => row.is === 'entry' && passes(row))];
}

function textOf({ texts }: Book, { boat }: Loaded, entry: Entry): string {
  const known = texts.get(entry);
  if (known !== undefined) return known;
  const parts = [entryWords(entry, boat), entry.kind, entry.by ?? '', entry.id, entry.at.slice(0, 10)];
  const text = parts.join(' ').toLocaleLowerCase();
  texts.set(entry, text);
  return text;
}
