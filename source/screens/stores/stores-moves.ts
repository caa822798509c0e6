import { EMPTY } from '../field.ts';
import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { sightOf } from '../sight.ts';
import { inHand, type StoresPage } from './stores.ts';

const NEW_STORES: StoresPage = { page: 'stores', from: 0, find: EMPTY, chosen: null, shopping: false };

export function openStores(model: Model): Step {
  return [model.boat.is === 'open' ? turnedTo(model, NEW_STORES) : model, []];
}

/** To the next store shown or the one before, not past the ends. */
export function chooseStore(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const sight = sightOf(model);
    if (page.page !== 'stores' || !sight) return [model, []];
    const { ids, at } = inHand(sight, page);
    const chosen = ids[Math.max(0, Math.min(ids.length - 1, at + by))] ?? null;
    return [withTop(model, { ...page, chosen }), []];
  };
}

/** To the page of the store in hand. */
export function turnToStore(model: Model): Step {
  const id = storeInHand(model);
  return [id === null ? model : turnedTo(model, { page: 'item', id, from: 0 }), []];
}

/** What is typed goes first, then the page. */
export function leaveStores(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'stores') return [model, []];
  if (page.shopping) return [withTop(model, { ...page, shopping: false }), []];
  return [
    page.find.text === '' ? turnedBack(model) : withTop(model, { ...page, find: EMPTY, chosen: null }),
    [],
  ];
}

/** The shopping list and back. */
export function toShopping(model: Model): Step {
  const page = pageOf(model);
  return [page.page === 'stores' ? withTop(model, { ...page, shopping: !page.shopping }) : model, []];
}

/** The id of the store in hand; null where there is none, or the shopping list is shown. */
export function storeInHand(model: Model): string | null {
  const page = pageOf(model);
  const sight = sightOf(model);
  if (page.page !== 'stores' || page.shopping || !sight) return null;
  const { ids, at } = inHand(sight, page);
  return ids[at] ?? null;
}
