import { tablesOf } from '../../words/traced.ts';
import { type Model, pageOf } from '../model.ts';
import { toldOf } from './trace.ts';

/** The trace on top with what it is told from; null where there is none, or it is still being worked out. */
export function openTrace(model: Model) {
  const page = pageOf(model);
  if (page.page !== 'trace' || model.boat.is !== 'open') return null;
  const { loaded } = model.boat;
  const document = toldOf(model, page.id)?.trace ?? null;
  return document?.table.id === page.table ? { page, loaded, document } : null;
}

/** The newest entry that answers a clue of this hunt. */
export function lastAnswer({ page, loaded, document }: NonNullable<ReturnType<typeof openTrace>>) {
  const answered = new Set(document.clues.filter(({ from }) => from === 'asked').map(({ id }) => id));
  return loaded.condition.clues.findLast(({ item, clue }) => item === page.id && answered.has(clue)) ?? null;
}

/** The id of the thing the page on top is about, where it can be traced; null elsewhere. */
export function tracedThing(model: Model): string | null {
  const page = pageOf(model);
  return page.page === 'item' || page.page === 'engine' || page.page === 'trace' ? page.id : null;
}

/** Whether at least so many tables fit the thing of the page on top. */
export function hasTables(least: number): (model: Model) => boolean {
  return (model) => {
    const id = tracedThing(model);
    if (id === null || model.boat.is !== 'open') return false;
    return tablesOf(model.boat.loaded, id).length >= least;
  };
}

/** Whether something was found before of the thing of the page on top. */
export function hasFound(model: Model): boolean {
  const id = tracedThing(model);
  return id !== null && (toldOf(model, id)?.found.length ?? 0) > 0;
}

/** Whether there is another closed hunt to turn to. */
export function hasSeveralFound(model: Model): boolean {
  const page = pageOf(model);
  return page.page === 'found' && (toldOf(model, page.id)?.found.length ?? 0) > 1;
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

/** Whether work was done that nobody knows yet to have helped. */
export function isWorkOpen(model: Model): boolean {
  const open = openTrace(model);
  return open !== null && open.loaded.readOnly === null && open.document.jobs.length > 0;
}

/** Whether the trace on top is one of a bilge. */
export function isOfBilge(model: Model): boolean {
  const open = openTrace(model);
  if (!open) return false;
  const table = tablesOf(open.loaded, open.page.id).find(({ id }) => id === open.page.table);
  return table?.liquid === 'bilge';
}
