import { EMPTY } from '../field.ts';
import {
  type Loaded,
  type Model,
  type Page,
  pageOf,
  type Request,
  type Step,
  turnedBack,
  turnedTo,
  withTop,
} from '../model.ts';
import { shownItems } from '../shown-item.ts';
import { type LogPage, NEW_LOG, placeOf } from './log-page.ts';
import { isAllSearched, itemIn, keyOf, type Row, rowNamed, rowsOf } from './rows.ts';

/** Turns to the log; from the page of an item, to what names it. */
export function log(model: Model): Step {
  const page = pageOf(model);
  if (model.boat.is !== 'open') return [model, []];
  const item = page.page === 'item' || page.page === 'engine' ? page.id : null;
  return [turnedTo(model, { ...NEW_LOG, item }), wordingFrom(model.boat.loaded, 0)];
}

function wordingFrom(loaded: Loaded, worded: number): Request[] {
  return isAllSearched(loaded, worded) ? [] : [{ do: 'word', loaded, from: worded }];
}

/** The log turned to takes what was worded, and asks for more until all of it is. */
export function worded(model: Model, of: Loaded, upTo: number): Step {
  const shown = model.boat.is === 'open' && model.boat.loaded === of && model.pages.some(isLog);
  return shown ? [withWorded(model, upTo), wordingFrom(of, upTo)] : [model, []];
}

/** What was worded of an older reading of the folder no longer holds. */
export function wordedAnew(model: Model, loaded: Loaded): Step {
  return model.pages.some(isLog) ? [withWorded(model, 0), wordingFrom(loaded, 0)] : [model, []];
}

function withWorded(model: Model, upTo: number): Model {
  const [board, ...rest] = model.pages;
  return {
    ...model,
    pages: [board, ...rest.map((page) => (isLog(page) ? { ...page, worded: upTo } : page))],
  };
}

function isLog(page: Page): page is LogPage {
  return page.page === 'log';
}

/** The row the choice rests on, or that is turned to; null where it is no log that is turned to, or nothing in it is listed. */
export function chosenRow(model: Model): Row | null {
  const page = pageOf(model);
  if (model.boat.is !== 'open') return null;
  const { loaded } = model.boat;
  if (page.page === 'entry') return rowNamed(loaded, page.row);
  if (page.page !== 'log') return null;
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

/** Turns to all there is of the row chosen. */
export function openEntry(model: Model): Step {
  const row = chosenRow(model);
  return [row === null ? model : turnedTo(model, { page: 'entry', from: 0, row: keyOf(row) }), []];
}

/** Turns to the page of the item or engine the entry is about. */
export function openItem(model: Model): Step {
  const id = itemToOpen(model);
  if (model.boat.is !== 'open' || id === null) return [model, []];
  const page = isEngine(model.boat.loaded, id) ? 'engine' : 'item';
  return [turnedTo(model, { page, id, from: 0 }), []];
}

/** The item or engine the entry is about, where it has a page. */
export function itemToOpen(model: Model): string | null {
  const row = chosenRow(model);
  const id = row?.is === 'entry' ? itemIn(row.entry) : null;
  if (model.boat.is !== 'open' || id === null) return null;
  const { loaded } = model.boat;
  if (isEngine(loaded, id)) return id;
  return shownItems(model.boat).some((item) => item.id === id) ? id : null;
}

function isEngine({ boat }: Loaded, id: string): boolean {
  return boat.engines.some((engine) => engine.id === id);
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
