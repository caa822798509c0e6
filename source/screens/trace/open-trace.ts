import { type Model, pageOf } from '../model.ts';
import { traceIn, traceTables } from './trace.ts';

/** The trace on top with what it is reckoned from; null where there is none. */
export function openTrace(model: Model) {
  const page = pageOf(model);
  if (page.page !== 'trace' || model.boat.is !== 'open') return null;
  const { loaded } = model.boat;
  const document = traceIn(loaded, page);
  return document && { page, loaded, document };
}

/** The newest entry that answers a clue of this hunt. */
export function lastAnswer({ page, loaded, document }: NonNullable<ReturnType<typeof openTrace>>) {
  const answered = new Set(document.clues.filter(({ from }) => from === 'asked').map(({ id }) => id));
  return loaded.condition.clues.findLast(({ item, clue }) => item === page.id && answered.has(clue)) ?? null;
}

/** Whether at least so many tables fit the item of the page on top. */
export function hasTables(least: number): (model: Model) => boolean {
  return (model) => {
    const page = pageOf(model);
    if ((page.page !== 'item' && page.page !== 'trace') || model.boat.is !== 'open') return false;
    return traceTables(model.boat.loaded, page.id).length >= least;
  };
}

/** Whether a look is asked for that can be answered here. */
export function isAsked(model: Model): boolean {
  const open = openTrace(model);
  return open !== null && open.document.next !== null && open.loaded.readOnly === null;
}

/** Whether an answer is there to be struck. */
export function isTold(model: Model): boolean {
  const open = openTrace(model);
  return open !== null && open.loaded.readOnly === null && lastAnswer(open) !== null;
}
