import { amountWords, badHundred, moneyWords } from '../../words/say.ts';
import { costWords, shoppingLines } from '../../words/shopping.ts';
import type { StoresDocument } from '../../words/stores-document.ts';
import { fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import { LOOKING_ONLY } from '../looking-only.ts';
import { MARKS } from '../panel.ts';
import type { Sight } from '../sight.ts';
import { pad, widthOf } from '../width.ts';
import { inHand, type Shown, type StoresPage, shelves, storesDocument } from './stores.ts';

export function storesTitle({ find, shopping }: StoresPage, columns: number): Line {
  if (shopping) return line(say('  TO BUY', 'title'));
  const left = [say('  STORES', 'title'), say('  find ')];
  return apart([...left, ...fieldSpans(find, Math.max(4, columns - 20))], [], columns);
}

/** The stores shelf by shelf with what is known of the one in hand, or the shopping list. */
export function storesLines(sight: Sight, page: StoresPage, columns: number): Line[] {
  const document = storesDocument(sight);
  if (page.shopping) return shoppingPart(sight, document, columns);
  const shown = shelves(document, page.find.text);
  if (shown.length === 0) {
    const none = page.find.text === '' ? 'No stores in the boat file.' : 'Nothing aboard is called so.';
    return [line(say(`  ${none}`))];
  }
  const { ids, at } = inHand(sight, page);
  const wide = Math.min(
    Math.max(...shown.flatMap(({ stores }) => stores.map(({ name }) => widthOf(name)))),
    Math.max(12, columns - 26),
  );
  const closed = sight.boat.loaded.readOnly
    ? paragraph(LOOKING_ONLY, columns - 2, { indent: 2, tone: 'watch' })
    : [];
  const lines = shown.flatMap(({ title, stores }, index) => [
    ...(index === 0 ? [] : [BLANK]),
    line(say(`  ${title}`, 'title')),
    ...stores.flatMap((store) => storeLines(sight, store, store.id === ids[at], wide, columns)),
  ]);
  const working = sight.document
    ? []
    : [
        ...paragraph('As counted; how likely each is to run short is being worked out.', columns - 2, {
          indent: 2,
        }),
        BLANK,
      ];
  return [...closed, ...working, ...lines];
}

function storeLines(sight: Sight, store: Shown, here: boolean, wide: number, columns: number): Line[] {
  // Before the first reckoning none is known to be fit.
  const isKnown = store.count !== null && (sight.document !== null || store.state !== 'fit');
  const state = isKnown ? store.state : null;
  const aboard = store.count === null ? '-' : amountWords(store.count, store.unit);
  const buy = store.count !== null && store.buy > 0 ? `buy ${amountWords(store.buy, store.unit)}` : '';
  const row: Line = {
    ...line(
      say(here ? '> ' : '  ', 'chosen'),
      say(`${state === null ? ' ' : MARKS[state]} `, state ?? 'plain'),
      say(`${pad(store.name, wide)}  `, here ? 'chosen' : 'plain'),
      say(`${pad(aboard, 10)}${buy}`),
    ),
    stop: { key: store.id, part: 'stores', opens: { open: 'item', id: store.id } },
    heard: here
      ? `In hand: ${store.name}, ${store.count === null ? 'not counted yet' : `${aboard} aboard`}${buy === '' ? '' : `, ${buy}`}.`
      : '',
  };
  return here
    ? [row, ...detailsOf(store).flatMap((text) => paragraph(text, columns - 2, { indent: 6 }))]
    : [row];
}

function detailsOf(store: Shown): string[] {
  const stowed = store.locker === null ? [] : [`stowed: ${store.locker}`];
  if (store.count === null) return [[...stowed, 'nobody has counted it; = counts'].join('; ')];
  const { unit, wanted, cover95, shortChance, price, takenBy, reasons } = store;
  const facts = [
    ...stowed,
    ...(wanted === null ? [] : [`${amountWords(wanted, unit)} wanted`]),
    ...(shortChance === null ? [] : [`short this passage ${badHundred(shortChance)}`]),
    ...(cover95 === null ? [] : [`enough in 95 of 100: ${amountWords(cover95, unit)}`]),
    ...(price === null ? [] : [`price ${moneyWords(price)}`]),
  ];
  return [
    ...(facts.length === 0 ? [] : [facts.join('; ')]),
    ...(takenBy.length === 0 ? [] : [`for ${takenBy.map(({ name }) => name).join(', ')}`]),
    ...(store.state === 'fit' ? [] : reasons),
  ];
}

function shoppingPart(sight: Sight, document: StoresDocument, columns: number): Line[] {
  const list = shoppingLines(document);
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const working = sight.document
    ? []
    : [...told('Up to what is wanted; whether that is enough is being worked out.'), BLANK];
  if (list.length === 0) return sight.document ? told('Nothing to buy.') : working;
  const cost = costWords(document.cost).replace(/^, /u, '');
  return [
    ...working,
    ...list.flatMap(told),
    ...(cost === '' ? [] : [BLANK, ...told(`In all ${cost}.`)]),
    BLANK,
    ...told('As a file: hoveshort stores --markdown > to-buy.md, or --csv.'),
  ];
}
