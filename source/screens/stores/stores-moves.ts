import { EMPTY } from '../field.ts';
import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { sightOf } from '../sight.ts';
import { chosenSpare, shelvesOf } from './found.ts';
import { NEW_STORES } from './stores-page.ts';

/** Turns to the stores. */
export function stores(model: Model): Step {
  return model.boat.is === 'open' ? [turnedTo(model, NEW_STORES), []] : [model, []];
}

/** The choice moves by so many spares, never past the ends. */
export function chooseSpare(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const sight = sightOf(model);
    if (page.page !== 'stores' || !sight) return [model, []];
    const ids = shelvesOf(sight, page).flatMap(({ spares }) => spares.map(({ id }) => id));
    const at = ids.indexOf(chosenSpare(sight, page)?.id ?? '');
    const chosen = ids[Math.max(0, Math.min(ids.length - 1, at + by))] ?? null;
    return [withTop(model, { ...page, chosen }), []];
  };
}

/** From the stores to the shopping list and back. */
export function turnShopping(model: Model): Step {
  const page = pageOf(model);
  return page.page === 'stores' ? [withTop(model, { ...page, shopping: !page.shopping }), []] : [model, []];
}

/** Turns to the page of the spare chosen. */
export function openSpare(model: Model): Step {
  const page = pageOf(model);
  const sight = sightOf(model);
  const spare = page.page === 'stores' && sight ? chosenSpare(sight, page) : null;
  return spare ? [turnedTo(model, { page: 'item', id: spare.id, from: 0 }), []] : [model, []];
}

/** Out of the shopping list; else nothing is looked for any more; else back. */
export function leaveStores(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'stores') return [model, []];
  if (page.shopping) return turnShopping(model);
  if (page.find.text !== '') return [withTop(model, { ...page, find: EMPTY, chosen: null }), []];
  return [turnedBack(model), []];
}
