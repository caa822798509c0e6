import { type Model, pageOf, type Step, withTop } from '../model.ts';
import { sightOf } from '../sight.ts';
import { roundLines } from './round-page.ts';

/** Shows what lies further down or up than the row in hand keeps in sight. */
export function lookFurther(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const sight = sightOf(model);
    if (page.page !== 'round' || !sight) return [model, []];
    const { from } = roundLines(sight, page, model.size);
    const home = roundLines(sight, { ...page, from: 0 }, model.size).from;
    const wanted = { ...page, from: from - home + by * Math.max(1, model.size.rows - 6) };
    return [withTop(model, { ...page, from: roundLines(sight, wanted, model.size).from - home }), []];
  };
}
