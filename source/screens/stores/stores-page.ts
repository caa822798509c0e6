import { amountWords, badHundred, counted, moneyWords, sentence } from '../../words/say.ts';
import { costWords, shoppingLines } from '../../words/shopping.ts';
import { storesOf, takersOf } from '../../words/stores-document.ts';
import { sayShortly } from '../../words/troubles.ts';
import { EMPTY, type Field, fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import type { Size } from '../model.ts';
import { MARKS } from '../panel.ts';
import type { Sight } from '../sight.ts';
import { pad } from '../width.ts';
import { windowOf } from '../window.ts';
import { chosenSpare, type Spare, shelvesOf } from './found.ts';

export interface StoresPage {
  readonly page: 'stores';
  readonly from: number;
  /** What is looked for. */
  readonly find: Field;
  /** The id of the spare chosen; null until the choice is moved: then it is the first. */
  readonly chosen: string | null;
  /** The shopping list in the place of the stores. */
  readonly shopping: boolean;
}

export const NEW_STORES: StoresPage = {
  page: 'stores',
  from: 0,
  find: EMPTY,
  chosen: null,
  shopping: false,
};

export function storesTitle(sight: Sight, { shopping }: StoresPage, columns: number): Line {
  const short = sight.document?.items.filter((item) => item.kind === 'spare' && item.buy > 0).length;
  const right = short === undefined ? 'working' : short === 0 ? 'nothing to buy' : `${short} to buy`;
  return apart([say(shopping ? '  TO BUY' : '  STORES', 'title')], [say(`${right}  `)], columns);
}

/** The line that is typed in, then what it finds, the chosen one with where it lies, what takes it and why it is short; or the shopping list. */
export function storesLines(sight: Sight, page: StoresPage, size: Size, rows: number): Line[] {
  if (page.shopping) return shoppingList(sight, size.columns);
  const { readOnly } = sight.boat.loaded;
  const { columns } = size;
  const head = [
    ...(readOnly
      ? paragraph(`Looking only, nothing can be saved: ${sayShortly(readOnly)}`, columns - 2, {
          indent: 2,
          tone: 'watch',
        })
      : []),
    findLine(page, columns),
  ];
  const chosen = chosenSpare(sight, page);
  const shelves = shelvesOf(sight, page).flatMap(({ title, isPlace, spares }, index) => [
    ...(index === 0 ? [] : [BLANK]),
    headLine(title, index === 0, columns),
    ...spares.flatMap((spare) => spareLines(sight, spare, spare === chosen, isPlace, columns)),
  ]);
  const body = chosen ? shelves : [line(say(nothing(sight, page)))];
  return [...head, ...windowOf(body, chosen?.id ?? null, Math.max(1, rows - head.length))];
}

function findLine({ find }: StoresPage, columns: number): Line {
  const field = fieldSpans(find, Math.max(8, columns - 8));
  const hint = find.text === '' && columns >= 60 ? [say('  a name, a locker, what it is for')] : [];
  const heard = `Now typing what to find: ${find.text === '' ? 'nothing yet' : find.text}.`;
  return { ...line(say('  find ', 'chosen'), ...field, ...hint), heard };
}

function nothing({ items }: Sight, { find }: StoresPage): string {
  return items.some(({ kind }) => kind === 'spare')
    ? `  Nothing aboard is called so: ${find.text.trim()}`
    : '  The boat file names no spares.';
}

/** How wide each column is; 0 leaves it out. */
function widthsOf(columns: number) {
  const short = columns >= 72 ? 20 : 0;
  const locker = columns >= 100 ? 28 : 0;
  const buy = 11;
  const aboard = 9;
  return { name: Math.max(8, columns - 6 - aboard - short - buy - locker), aboard, short, buy, locker };
}

function headLine(title: string, first: boolean, columns: number): Line {
  if (!first) return line(say(`  ${title}`, 'title'));
  const { name, aboard, short, buy, locker } = widthsOf(columns);
  const heads = [
    pad('aboard', aboard, 'right'),
    pad(short > 0 ? 'may run short' : '', short, 'right'),
    pad('', buy),
    pad(locker > 0 ? '   stowed' : '', locker),
  ];
  return { ...line(say(pad(`  ${title}`, name + 4), 'title'), say(heads.join(''))), heard: '' };
}

function spareLines(sight: Sight, spare: Spare, chosen: boolean, isPlace: boolean, columns: number): Line[] {
  const { name, aboard, short, buy, locker } = widthsOf(columns);
  const { count, unit, state, shortChance } = spare;
  const tone = chosen ? 'chosen' : 'plain';
  const cells = [
    pad(count === null ? '-' : amountWords(count, unit), aboard, 'right'),
    pad(short === 0 || shortChance === null ? '' : badHundred(shortChance), short, 'right'),
    pad(spare.buy > 0 ? `  buy ${amountWords(spare.buy, unit)}` : '', buy),
    pad(locker === 0 || isPlace ? '' : `   ${spare.locker ?? ''}`, locker),
  ];
  const row: Line = {
    ...line(
      say(chosen ? '> ' : '  ', 'chosen'),
      say(state === null || count === null ? '  ' : `${MARKS[state]} `, state ?? 'plain'),
      say(pad(spare.name, name), tone),
      say(cells.join(''), tone),
    ),
    stop: { key: spare.id, part: 'stores', opens: { open: 'item', id: spare.id } },
    heard: chosen ? `Chosen: ${spare.name}, ${aboardWords(spare)}.` : '',
  };
  const told = chosen ? aboutSpare(sight, spare) : [];
  return [row, ...told.flatMap((text) => paragraph(text, columns - 2, { indent: 6 }))];
}

function aboardWords({ count, unit }: Spare): string {
  return count === null ? 'not entered yet' : `${amountWords(count, unit)} aboard`;
}

/** Where it lies, why it is short, what it costs and what takes it. */
function aboutSpare(
  sight: Sight,
  { id, unit, reason, state, locker, shortChance, buy, cost }: Spare,
): string[] {
  const { boat } = sight.boat.loaded;
  const spare = boat.spares.find((one) => one.id === id);
  const wanted = spare?.wanted === undefined ? [] : [`${amountWords(spare.wanted, unit)} wanted aboard`];
  const chance = shortChance === null ? [] : [`runs short on ${badHundred(shortChance)} passages`];
  const toBuy =
    buy > 0 ? [`buy ${amountWords(buy, unit)}${cost === null ? '' : `, about ${moneyWords(cost)}`}`] : [];
  const price =
    spare?.price === undefined
      ? []
      : [`${moneyWords(spare.price)} ${unit === 'each' ? 'each' : `a ${unit}`}`];
  const takers = takersOf(boat, id).map(({ name, count }) =>
    count === null ? name : `${name} (${amountWords(count, unit)})`,
  );
  const place = locker === null ? 'No place is named for it' : `Stowed: ${locker}`;
  return [
    ...(reason === null || state === 'fit' ? [] : [sentence(reason)]),
    `${[place, ...price, ...wanted, ...chance, ...toBuy].join('; ')}.`,
    ...(takers.length === 0 ? [] : [`For ${takers.join(', ')}.`]),
  ];
}

function shoppingList({ boat, document }: Sight, columns: number): Line[] {
  if (!document) return [line(say('  The passages are being sailed.'))];
  const told = (text: string, indent = 2) => paragraph(text, columns - 2, { indent });
  const stores = storesOf(boat.loaded.boat, document);
  const lines = shoppingLines(stores);
  const how = [
    'As a file, from a shell:',
    '  hoveshort stores > stores.txt',
    '  hoveshort stores --markdown > to-buy.md',
    '  hoveshort stores --csv > to-buy.csv',
  ];
  return [
    ...told(
      lines.length === 0
        ? 'Nothing.'
        : `${counted(lines.length, 'thing', 'things')}${costWords(stores.cost)}.`,
    ),
    ...lines.flatMap((text) => told(`- ${text}`, 4)),
    BLANK,
    ...how.flatMap((text) => told(text, 2 + text.length - text.trimStart().length)),
  ];
}
