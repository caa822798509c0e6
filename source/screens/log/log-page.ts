import { entryWords } from '../../words/entry-words.ts';
import { preferred } from '../../words/preferred.ts';
import { capital, counted, dayWords, momentWords } from '../../words/say.ts';
import { sayTrouble } from '../../words/troubles.ts';
import { EMPTY, fieldSpans } from '../field.ts';
import { apart, type Line, line, paragraph, say } from '../lines.ts';
import type { Loaded, Size } from '../model.ts';
import { nameOf, type Sight } from '../sight.ts';
import { cut, pad, widthOf } from '../width.ts';
import {
  damageIn,
  type EntryRow,
  entryOf,
  type Filter,
  isAllSearched,
  laterThan,
  placeIn,
  type Row,
  rowsOf,
  strikesOf,
  wrongWith,
} from './rows.ts';

export interface LogPage extends Filter {
  readonly page: 'log';
  readonly from: number;
  /** What is searched for is being typed. */
  readonly finding: boolean;
  /** What names the row chosen; null until the choice is moved: then it is the first. */
  readonly chosen: string | null;
}

export const NEW_LOG: LogPage = {
  page: 'log',
  from: 0,
  kind: null,
  item: null,
  wrong: false,
  find: EMPTY,
  worded: 0,
  finding: false,
  chosen: null,
};

/** Where among the rows the choice rests; -1 where there are none. */
export function placeOf(loaded: Loaded, page: LogPage): number {
  return placeIn(loaded, rowsOf(loaded, page), page.chosen);
}

export function logTitle(sight: Sight, page: LogPage, columns: number): Line {
  const { loaded } = sight.boat;
  const rows = rowsOf(loaded, page);
  const what = [
    page.wrong ? 'what is wrong' : '',
    page.kind ?? '',
    page.item === null ? '' : nameOf(sight, page.item),
  ].filter((words) => words !== '');
  const at = placeOf(loaded, page);
  const found = rows.length === 0 ? 'none' : `${at + 1} of ${rows.length}`;
  const right = isLooking(loaded, page) ? `${found} so far, looking` : found;
  const left = [say('  LOG', 'title'), say(what.length === 0 ? '' : `  only ${what.join(', ')}`)];
  return apart(left, [say(`${right}  `)], columns);
}

/** As many lines as there are rows of the window: only what is seen is worded. */
export function logLines(sight: Sight, page: LogPage, { columns }: Size, rows: number): Line[] {
  const { loaded } = sight.boat;
  const head = headLines(sight, page, columns);
  const room = Math.max(1, rows - head.length);
  const listed = rowsOf(loaded, page);
  if (listed.length === 0)
    return [...head, line(say(isLooking(loaded, page) ? '  Looking.' : '  Nothing in the log is so.'))];
  const at = placeOf(loaded, page);
  const told = chosenLines(sight, listed[at]!, columns);
  const before = Math.min(
    at,
    Math.max(0, Math.floor(room / 2) - 1, room - (listed.length - at) - told.length),
  );
  const shown = listed.slice(at - before, at - before + room);
  const body = shown.flatMap((row, index) => {
    const chosen = index === before;
    return [rowLine(sight, row, chosen, columns), ...(chosen ? told : [])];
  });
  return [...head, ...body.slice(0, room)];
}

/** A long log is searched as fast as it is worded. */
function isLooking(loaded: Loaded, { find, worded }: LogPage): boolean {
  return find.text !== '' && !isAllSearched(loaded, worded);
}

function headLines(sight: Sight, page: LogPage, columns: number): Line[] {
  const { loaded } = sight.boat;
  const damage = damageIn(loaded).length;
  const later = laterThan(loaded);
  const search: Line = {
    ...line(say('  search ', 'chosen'), ...fieldSpans(page.find, Math.max(8, columns - 10))),
    heard: `Now typing what to search for: ${page.find.text === '' ? 'nothing yet' : page.find.text}.`,
  };
  return [
    ...(loaded.readOnly
      ? [line(say('  Looking only, nothing can be saved: ! says what stands in the way.', 'watch'))]
      : []),
    ...(later > 0
      ? [
          line(
            say(
              `  ${counted(later, 'entry', 'entries')} later than the moment looked at ${later === 1 ? 'is' : 'are'} not listed.`,
            ),
          ),
        ]
      : []),
    ...(damage > 0 && !page.wrong
      ? [
          line(
            say(
              `  ! ${counted(damage, 'thing', 'things')} wrong with the files of the log: d shows`,
              'watch',
            ),
          ),
        ]
      : []),
    ...(page.finding ? [search] : page.find.text === '' ? [] : [line(say(`  search ${page.find.text}`))]),
  ];
}

function rowLine(sight: Sight, row: Row, chosen: boolean, columns: number): Line {
  const text = chosen ? `> ${rowWords(sight, row, columns)}` : `  ${rowWords(sight, row, columns)}`;
  const wrong = row.is === 'wrong' || wrongWith(sight.boat.loaded, row.entry) !== null;
  return {
    ...line(say(cut(text, columns - 1), chosen ? 'chosen' : wrong ? 'watch' : 'plain')),
    heard: chosen ? `Chosen: ${rowWords(sight, row, 1000)}.` : '',
  };
}

function rowWords(sight: Sight, row: Row, columns: number): string {
  if (row.is === 'wrong') return `! ${sayTrouble(row.trouble).split('\n')[0]}`;
  const { loaded } = sight.boat;
  const { entry, struck } = row;
  const mark = wrongWith(loaded, entry) === null ? ' ' : '!';
  const by = columns < 100 || columns >= 1000 ? '' : pad(entry.by ?? '', 10);
  return `${mark} ${whenWords(sight, entry, columns)} ${by} ${struck ? 'STRUCK: ' : ''}${wordsOf(sight, row)}`;
}

/** Where there is no room for a year and a time, the day of another year. */
function whenWords({ model: { zone }, at }: Sight, entry: { readonly at: string }, columns: number): string {
  const [when, wide] = [Date.parse(entry.at), preferred().clock === '12 h' ? 2 : 0];
  const words = momentWords(when, zone, at);
  if (columns >= 80) return pad(words, 22 + wide);
  return pad(widthOf(words) > 17 + wide ? dayWords(when, zone) : words, 17 + wide);
}

/** What an entry says; of a strike, what it struck or restored. */
export function wordsOf({ boat }: Sight, { entry }: EntryRow): string {
  const { loaded } = boat;
  if (entry.kind !== 'strike') return entryWords(entry, loaded.boat);
  const target = entryOf(loaded, entry.entry);
  const what = target ? entryWords(target.entry, loaded.boat) : `entry ${entry.entry}`;
  const restores = target?.entry.kind === 'strike' ? 'restored' : 'struck';
  return `${capital(restores)}: ${what}${entry.why === undefined ? '' : `, because ${entry.why}`}`;
}

/** All there is to say of the row chosen: its words in full, who typed it and when, its place in the log, its strike, what is wrong with it. */
function chosenLines(sight: Sight, row: Row, columns: number): Line[] {
  const told = (text: string) => paragraph(text, columns - 2, { indent: 6 });
  if (row.is === 'wrong') return sayTrouble(row.trouble).split('\n').flatMap(told);
  const { entry, struck } = row;
  const { zone } = sight.model;
  const { loaded } = sight.boat;
  const strike = struck ? strikesOf(loaded, entry).at(-1) : undefined;
  const wrong = wrongWith(loaded, entry);
  const typed = `Typed ${momentWords(Date.parse(entry.rec), zone, sight.at)}${entry.by === undefined ? '' : ` by ${entry.by}`}; line ${entry.n} of ${entry.writer}, entry ${entry.id}.`;
  return [
    ...(widthOf(rowWords(sight, row, columns)) + 3 > columns ? told(`${wordsOf(sight, row)}.`) : []),
    ...(wrong === null ? [] : told(wrong)),
    ...(struck
      ? told(
          strike
            ? `Struck ${momentWords(Date.parse(strike.rec), zone, sight.at)}${strike.by === undefined ? '' : ` by ${strike.by}`}${strike.why === undefined ? '' : `, because ${strike.why}`}.`
            : 'Struck.',
        )
      : []),
    ...told(typed),
  ];
}
