import { clean } from './clean.ts';
import { amountWords, moneyWords } from './say.ts';
import type { StoreDocument, StoresDocument } from './stores-document.ts';

/** What to buy, a line a thing: how many, what, what is aboard and wanted, the cost, where it is stowed. */
export function shoppingLines({ stores }: StoresDocument): string[] {
  return toBuy(stores).map(({ name, buy, unit, count, wanted, cost, locker }) =>
    [
      `${amountWords(buy, unit)}${unit === 'each' ? ' x' : ' of'} ${name}`,
      `${amountWords(count, unit)} aboard${wanted === null ? '' : ` of ${amountWords(wanted, unit)} wanted`}`,
      ...(cost === null ? [] : [`about ${moneyWords(cost)}`]),
      ...(locker === null ? [] : [`stowed: ${locker}`]),
    ].join('; '),
  );
}

/** The shopping list as Markdown: a heading and a list of boxes to tick. */
export function shoppingMarkdown(document: StoresDocument): string {
  const lines = shoppingLines(document).map((line) => `- [ ] ${escaped(line)}`);
  const list = lines.length === 0 ? ['Nothing.'] : lines;
  return `# To buy for ${escaped(document.boat)}${escaped(costWords(document.cost))}\n\n${list.join('\n')}\n`;
}

/** The shopping list as CSV (RFC 4180): a heading, then a row a thing, figures with a point. */
export function shoppingCsv({ stores }: StoresDocument): string {
  const heading = ['buy', 'unit', 'name', 'aboard', 'wanted', 'price', 'cost', 'stowed'];
  const rows = toBuy(stores).map(({ buy, unit, name, count, wanted, price, cost, locker }) => [
    buy,
    unit,
    name,
    count,
    wanted,
    price,
    cost,
    locker,
  ]);
  return [heading, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

/** `, about 120 and 2 things without a price`: what the whole list costs. */
export function costWords({ total, unpriced }: StoresDocument['cost']): string {
  const rest = unpriced === 0 ? '' : `, ${unpriced} without a price`;
  return total === 0 ? rest : `, about ${moneyWords(total)}${rest}`;
}

function toBuy(stores: readonly StoreDocument[]): readonly StoreDocument[] {
  return stores.filter(({ buy }) => buy > 0);
}

/** What begins with one of these a spreadsheet runs as a formula. */
const FORMULA = /^[=+\-@\t\r]/;

function cell(value: string | number | null): string {
  if (typeof value !== 'string') return value === null ? '' : String(value);
  const text = clean(FORMULA.test(value) ? `'${value}` : value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Names are shown as they are written: nothing in them is markup. */
function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~&]/g, '\\$&');
}
