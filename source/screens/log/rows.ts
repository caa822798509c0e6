import { about } from '../../logbook/about.ts';
import { type Entry, type EntryKind, itemField } from '../../logbook/entries.ts';
import { type Listed, newestFirst } from '../../logbook/newest-first.ts';
import type { Trouble } from '../../trouble.ts';
import { sayShortly } from '../../words/troubles.ts';
import type { Field } from '../field.ts';
import type { Loaded } from '../model.ts';
import { isFound, PART, type Searched, searchable, word, wordsIn } from './search.ts';

/** What is listed of the log. */
export interface Filter {
  readonly kind: EntryKind | null;
  /** The id of an item. */
  readonly item: string | null;
  /** Only what is wrong: lines that cannot be used, and entries left out of the sums. */
  readonly wrong: boolean;
  /** What is searched for. */
  readonly find: Field;
  /** So many of the newest are worded and can be searched. */
  readonly worded: number;
}

/** One thing listed: an entry, or what is wrong with a file or a line, which is no entry. */
export type Row = EntryRow | { readonly is: 'wrong'; readonly trouble: Trouble };

export type EntryRow = { readonly is: 'entry' } & Listed & Searched;

/** The whole log, newest first, or what of it passes the filter; with `wrong` first the lines that are no entries. */
export function rowsOf(loaded: Loaded, filter: Filter): readonly Row[] {
  const book = bookOf(loaded);
  const key = JSON.stringify([filter.kind, filter.item, filter.wrong]);
  const { last } = book;
  const text = filter.find.text;
  const worded = text === '' ? 0 : filter.worded;
  if (last?.key === key && last.text === text && last.worded === worded) return last.rows;
  // What has more to look for is among what had less.
  const narrower =
    last?.key === key && last.text !== '' && text.startsWith(last.text) && worded >= last.worded;
  const among = narrower
    ? [...last.rows, ...book.rows.slice(searchable(last.worded), searchable(worded))]
    : text === ''
      ? book.rows
      : book.rows.slice(0, searchable(worded));
  const rows = rowsBy(book, loaded, filter, among);
  book.last = { key, text, worded, rows };
  return rows;
}

/** Where among the rows the choice rests, by what names it; -1 where there are none. */
export function placeIn(loaded: Loaded, rows: readonly Row[], chosen: string | null): number {
  if (rows.length === 0) return -1;
  if (chosen === null) return 0;
  const book = bookOf(loaded);
  if (book.place?.rows !== rows || book.place.chosen !== chosen)
    book.place = {
      rows,
      chosen,
      at: Math.max(
        0,
        rows.findIndex((row) => keyOf(row) === chosen),
      ),
    };
  return book.place.at;
}

/** Whether all of the log is searched, where so many entries were worded ahead. */
export function isAllSearched(loaded: Loaded, worded: number): boolean {
  return searchable(worded) >= bookOf(loaded).rows.length;
}

/** Words the next of the entries, newest first, from this one on; how many then are. */
export function wordFrom(loaded: Loaded, from: number): number {
  const part = bookOf(loaded).rows.slice(from, from + PART);
  for (const row of part) word(row, loaded.boat);
  return from + part.length;
}

/** How many entries happened after the moment asked for. */
export function laterThan(loaded: Loaded): number {
  return bookOf(loaded).later;
}

/** Whether an entry had happened by the moment asked for. */
export function isSeen({ seenUntil }: Loaded): (listed: { readonly entry: Entry }) => boolean {
  return ({ entry }) => seenUntil === null || Date.parse(entry.at) <= seenUntil;
}

/** What names a row, whatever is written to the log meanwhile. */
export function keyOf(row: Row): string {
  return row.is === 'entry' ? row.entry.id : JSON.stringify(row.trouble);
}

/** The row of this key; null where it is no more. */
export function rowNamed(loaded: Loaded, key: string): Row | null {
  const book = bookOf(loaded);
  if (book.named?.key !== key) book.named = { key, row: foundNamed(loaded, key) };
  return book.named.row;
}

function foundNamed(loaded: Loaded, key: string): Row | null {
  const trouble = damageIn(loaded).find((one) => JSON.stringify(one) === key);
  if (trouble) return { is: 'wrong', trouble };
  return bookOf(loaded).rows.find(({ entry }) => entry.id === key) ?? null;
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
export function strikesOf({ entries }: Loaded, entry: Entry): readonly StrikeEntry[] {
  return strikesAmong(entries, entry);
}

/** The strikes that named an entry, standing or struck themselves, oldest first. */
export function strikesEver(
  loaded: Loaded,
  entry: Entry,
): readonly { readonly entry: StrikeEntry; readonly struck: boolean }[] {
  const standing = strikesOf(loaded, entry).map((strike) => ({ entry: strike, struck: false }));
  const withdrawn = strikesAmong(loaded.struck, entry).map((strike) => ({ entry: strike, struck: true }));
  return [...standing, ...withdrawn].sort((a, b) => a.entry.lc - b.entry.lc);
}

type StrikeEntry = Entry & { readonly kind: 'strike' };

function strikesAmong(entries: readonly Entry[], { id }: Entry): readonly StrikeEntry[] {
  const [bare] = id.split(':');
  return entries.filter(
    (entry): entry is StrikeEntry => entry.kind === 'strike' && (entry.entry === id || entry.entry === bare),
  );
}

/** The entry with this id, standing or struck. */
export function entryOf({ entries, struck }: Loaded, id: string): Listed | null {
  const standing = entries.find((entry) => entry.id === id);
  if (standing) return { entry: standing, struck: false };
  const withdrawn = struck.find((entry) => entry.id === id);
  return withdrawn ? { entry: withdrawn, struck: true } : null;
}

interface Book {
  readonly rows: readonly EntryRow[];
  /** How many happened after the moment asked for. */
  readonly later: number;
  readonly doubts: ReadonlyMap<string, Trouble>;
  last: {
    readonly key: string;
    readonly text: string;
    readonly worded: number;
    readonly rows: readonly Row[];
  } | null;
  place: { readonly rows: readonly Row[]; readonly chosen: string; readonly at: number } | null;
  named: { readonly key: string; readonly row: Row | null } | null;
}

/** A decade of entries is put in order once a reading of the folder. */
const books = new WeakMap<Loaded, Book>();

function bookOf(loaded: Loaded): Book {
  const known = books.get(loaded);
  if (known) return known;
  const doubts = [...loaded.troubles, ...loaded.condition.troubles].flatMap((trouble): [string, Trouble][] =>
    'entry' in trouble ? [[trouble.entry, trouble]] : [],
  );
  const all = newestFirst(loaded);
  const seen = loaded.seenUntil === null ? all : all.filter(isSeen(loaded));
  const book: Book = {
    rows: seen.map(({ entry, struck }) => ({ is: 'entry', entry, struck, text: null })),
    later: all.length - seen.length,
    doubts: new Map(doubts),
    last: null,
    place: null,
    named: null,
  };
  books.set(loaded, book);
  return book;
}

function rowsBy(
  book: Book,
  loaded: Loaded,
  { kind, item, wrong, find }: Filter,
  among: readonly Row[],
): readonly Row[] {
  const words = wordsIn(find.text);
  if (kind === null && item === null && !wrong && words.length === 0) return book.rows;
  const damage = wrong ? damageIn(loaded).map((trouble): Row => ({ is: 'wrong', trouble })) : [];
  const passes = (row: EntryRow) =>
    (kind === null || row.entry.kind === kind) &&
    (item === null || about(row.entry, item)) &&
    (!wrong || book.doubts.has(row.entry.id)) &&
    (words.length === 0 || isFound(row, loaded, words));
  return [...damage, ...among.filter((row) => row.is === 'entry' && passes(row))];
}
