import { lookedAt } from './looked-at.ts';
import { type Model, pageOf, type Step, withTop } from './model.ts';
import { shownItems } from './shown-item.ts';

/** From one item's page to the next, in the order of the boat file. */
export function turnItem(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'item' || model.boat.is !== 'open') return [model, []];
    const ids = shownItems(model.boat).map(({ id }) => id);
    const at = ids.indexOf(page.id);
    const id = ids[Math.max(0, Math.min(ids.length - 1, at + by))] ?? page.id;
    return [withTop(lookedAt(model, id), { page: 'item', id, from: 0 }), []];
  };
}
