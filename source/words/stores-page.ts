import { aligned, wrapped } from './lines.ts';
import { STATE_WORDS } from './reasons.ts';
import { amountWords, badHundred, counted, momentWords } from './say.ts';
import { costWords, shoppingLines } from './shopping.ts';
import type { StoreDocument, StoresDocument } from './stores-document.ts';

/** The stores as a page: what is aboard and where, short first, then what to buy, then what nobody has counted. The document is clean already. */
export function storesPage(document: StoresDocument, columns: number, zone: string): string {
  const { boat, at, stores, notEntered, cost } = document;
  const shopping = shoppingLines(document);
  const names = notEntered.map(({ name }) => name).join(', ');
  const sections = [
    wrapped(`${boat.toUpperCase()}: STORES, as of ${momentWords(Date.parse(at), zone)} (${zone})`, columns),
    table(stores, columns),
    stores.some(({ cover95 }) => cover95 !== null)
      ? wrapped('ENOUGH: the stock that does in 95 of 100 passages.', columns)
      : [],
    shopping.length === 0
      ? ['TO BUY: nothing']
      : [
          ...wrapped(`TO BUY: ${counted(shopping.length, 'thing', 'things')}${costWords(cost)}`, columns),
          ...shopping.flatMap((line) => wrapped(line, columns, 2, 2)),
        ],
    notEntered.length === 0 ? [] : wrapped(`NOT ENTERED YET (${notEntered.length}): ${names}`, columns, 0, 2),
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

function table(stores: readonly StoreDocument[], columns: number): string[] {
  if (stores.length === 0) return [];
  const [heading, ...rows] = aligned([
    ['', 'ABOARD', 'SHORT THIS PASSAGE', 'ENOUGH', 'STOWED'],
    ...stores.map(({ name, count, unit, shortChance, cover95, locker }) => [
      name,
      amountWords(count, unit),
      shortChance === null ? '-' : badHundred(shortChance),
      cover95 === null ? '-' : amountWords(cover95, unit),
      locker ?? '-',
    ]),
  ]);
  return [
    heading!,
    ...stores.flatMap(({ state, reasons, takenBy, unit }, index) => [
      rows[index]!,
      ...(state === 'fit'
        ? []
        : wrapped(`${STATE_WORDS[state]}: ${reasons.join(' ')}`.trimEnd(), columns, 4, 2)),
      ...(takenBy.length === 0 ? [] : wrapped(`for ${takers(takenBy, unit)}`, columns, 4, 2)),
    ]),
  ];
}

function takers(takenBy: StoreDocument['takenBy'], unit: string): string {
  return takenBy
    .map(({ name, count }) => (count === null ? name : `${name} (${amountWords(count, unit)})`))
    .join(', ');
}
