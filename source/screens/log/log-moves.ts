import { EMPTY } from '../field.ts';
import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { type LogPage, NEW_LOG, placeOf } from './log-page.ts';
import { itemIn, keyOf, type Row, rowsOf } from './rows.ts';

/** Turns to the log; from the page of an item, to what names it. */
export function log(model: Model): Step {
  const page = pageOf(model);
  if (model.boat.is !== 'open') return [model, []];
  const item = page.page === 'item' || page.page === 'engine' ? page.id : null;
  return [turnedTo(model, { ...NEW_LOG, item }), []];
}

/** The row the choice rests on; null where it is no log that is turned to, or nothing in it is listed. */
export function chosenRow(model: Model): Row | null {
  const page = pageOf(model);
  if (page.page !== 'log' || model.boat.is !== 'open') return null;
  const { loaded } = model.boat;
  return rowsOf(loaded, page)[placeOf(loaded, page)] ?? null;
}

/** The choice moves by so many rows, never past the ends. */
export function chooseEntry(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'log' || model.boat.is !== 'open') return [model, []];
    const { loaded } = model.boat;
    const rows = rowsOf(loaded, page);
    const row = rows[Math.max(0, Math.min(rows.length - 1, placeOf(loaded, page) + by))];
    return changed(model, page, { chosen: row ? keyOf(row) : null });
  };
}

export function chooseEntryPage(by: 1 | -1): (model: Model) => Step {
  return (model) => chooseEntry(by * Math.max(1, model.size.rows - 6))(model);
}

/** Begins to type what is searched for, or has done with it: what was typed still holds. */
export function searching(finding: boolean): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    return page.page === 'log' ? changed(model, page, { finding }) : [model, []];
  };
}

/** Only entries of the kind of the one chosen, or all kinds again. */
export function onlyKind(model: Model): Step {
  const page = pageOf(model);
  const row = chosenRow(model);
  if (page.page !== 'log') return [model, []];
  if (page.kind !== null) return changed(model, page, { kind: null });
  return row?.is === 'entry' ? changed(model, page, { kind: row.entry.kind }) : [model, []];
}

/** Only entries that name what the chosen one is about, or all again. */
export function onlyItem(model: Model): Step {
  const page = pageOf(model);
  const row = chosenRow(model);
  if (page.page !== 'log') return [model, []];
  if (page.item !== null) return changed(model, page, { item: null });
  const item = row?.is === 'entry' ? itemIn(row.entry) : null;
  return item === null
    ? [{ ...model, notice: 'this is about no one item' }, []]
    : changed(model, page, { item });
}

/** Only what is wrong, or all again. */
export function onlyWrong(model: Model): Step {
  const page = pageOf(model);
  return page.page === 'log' ? changed(model, page, { wrong: !page.wrong, chosen: null }) : [model, []];
}

/** Turns to the page of the item or engine the chosen entry is about. */
export function openEntry(model: Model): Step {
  const row = chosenRow(model);
  const id = row?.is === 'entry' ? itemIn(row.entry) : null;
  if (model.boat.is !== 'open' || id === null) return [model, []];
  if (id === '') return [model, []];
  const isEngine = model.boat.loaded.boat.engines.some((engine) => engine.id === id);
  return [turnedTo(model, { page: isEngine ? 'engine' : 'item', id, from: 0 }), []];
}

/** Searches for nothing any more; else lists all again; else back. */
export function leaveLog(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'log') return [model, []];
  if (page.finding || page.find.text !== '') return changed(model, page, { finding: false, find: EMPTY });
  if (page.kind !== null || page.wrong) return changed(model, page, { kind: null, wrong: false });
  return [turnedBack(model), []];
}

function changed(model: Model, page: LogPage, change: Partial<LogPage>): Step {
  return [withTop(model, { ...page, ...change }), []];
}
