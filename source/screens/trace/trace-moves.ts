import type { Draft, Entry } from '../../logbook/entries.ts';
import type { Result } from '../../trouble.ts';
import { instant } from '../../words/figures.ts';
import { tablesOf } from '../../words/traced.ts';
import { fieldWith } from '../field.ts';
import { fillIn } from '../forms/form-moves.ts';
import { forms } from '../forms/table.ts';
import { type Loaded, type Model, type Page, pageOf, type Step, turnedTo, withTop } from '../model.ts';
import { sightOf } from '../sight.ts';
import { pageRows, turnedPage } from '../turned.ts';
import { lastAnswer, openTrace, tracedThing } from './open-trace.ts';
import { type TracePage, toldOf } from './trace.ts';
import { lookFrom, lookInSight } from './trace-page.ts';

/** Turns to where it comes from, from the page of the item or engine. */
export function trace(model: Model): Step {
  const id = tracedThing(model);
  if (id === null || model.boat.is !== 'open') return [model, []];
  const [first] = tablesOf(model.boat.loaded, id);
  if (!first) return [model, []];
  const page = { page: 'trace', from: 0, id, table: first.id, flooding: null, asked: null } as const;
  return [turnedTo(model, page), []];
}

/** Turns to the newest of the hunts that work has closed. */
export function found(model: Model): Step {
  const id = tracedThing(model);
  const newest = id === null ? undefined : toldOf(model, id)?.found[0];
  if (id === null || !newest) return [model, []];
  return [turnedTo(model, { page: 'found', from: 0, id, found: newest.at }), []];
}

/** To an older closed hunt, or a newer one, not past the ends. */
export function turnFound(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'found') return [model, []];
    const all = toldOf(model, page.id)?.found ?? [];
    const next = all[all.findIndex(({ at }) => at === page.found) + by];
    return [next ? withTop(model, { ...page, found: next.at, from: 0 }) : model, []];
  };
}

/** Saves the answer to the look asked for; one that is out of sight is shown first. */
export function answer(seen: boolean | null): (model: Model) => Step {
  return (model) => {
    const open = openTrace(model);
    if (!open?.document.next) return [model, []];
    const { page, document } = open;
    if (page.asked) return [{ ...model, notice: 'the answer before is still being saved' }, []];
    const { lines } = turnedPage(model, page);
    const rows = pageRows(model.size);
    if (!lookInSight(lines, page.from, rows))
      return [
        { ...withTop(model, { ...page, from: lookFrom(lines, rows) }), notice: 'this is asked: y, n or c' },
        [],
      ];
    const said = seen === null ? { cannotTell: true as const } : { seen };
    return asked(model, page, [
      { kind: 'clue', ...typedBy(model), item: page.id, clue: document.next!.clue, ...said },
    ]);
  };
}

/** Strikes the last answer of the hunt. */
export function strikeClue(model: Model): Step {
  const open = openTrace(model);
  const last = open && lastAnswer(open);
  if (!open || !last) return [model, []];
  if (open.page.asked) return [{ ...model, notice: 'the answer before is still being saved' }, []];
  return asked(model, open.page, [{ kind: 'strike', ...typedBy(model), entry: last.id }]);
}

/** The form of work done, with the first cause of the repair order in it. */
export function workForIt(model: Model): Step {
  const sight = sightOf(model);
  const open = openTrace(model);
  const first = open?.document.repairs[0];
  const [opened, requests] = fillIn('job')(model);
  const form = pageOf(opened);
  if (!sight || !first || form.page !== 'form') return [opened, requests];
  const rows = forms.job.rows(sight, form.about);
  const row = rows.findIndex(({ field }) => field === 'cause');
  const cause = open.document.causes.find(({ id }) => id === first.cause);
  const fields = form.fields.map((field, index) => (index === row && cause ? fieldWith(cause.name) : field));
  return [withTop(opened, { ...form, fields }), requests];
}

/** To the next table that fits the item, round and round. */
export function nextTable(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'trace' || model.boat.is !== 'open' || page.asked) return [model, []];
  const ids = tablesOf(model.boat.loaded, page.id).map(({ id }) => id);
  const table = ids[(ids.indexOf(page.table) + 1) % ids.length] ?? page.table;
  return [withTop(model, { ...page, table, from: 0 }), []];
}

/** The pages once the disk has answered a trace; null where none asked for these. */
export function traceSaved(
  pages: Model['pages'],
  drafts: readonly Draft[],
  result: Result<readonly Entry[]>,
): Model['pages'] | null {
  const isOf = (page: Page): page is TracePage => page.page === 'trace' && page.asked?.drafts === drafts;
  if (!pages.some(isOf)) return null;
  const ids = result.ok ? result.value.map(({ id }) => id) : null;
  return eachTrace(pages, (page) => (isOf(page) ? { ...page, asked: ids && { drafts, ids } } : page));
}

/** The model once a trace was told from a reading of the folder: one that reckons with its last answer now shows the next look. */
export function traceReckoned(model: Model, { entries }: Loaded): Model {
  const pages = eachTrace(model.pages, (page) => {
    const { ids } = page.asked ?? { ids: null };
    if (!ids?.every((id) => entries.some((entry) => entry.id === id))) return page;
    const next = { ...page, asked: null };
    const { lines } = turnedPage(model, next);
    return { ...next, from: lookFrom(lines, pageRows(model.size)) };
  });
  return { ...model, pages };
}

function eachTrace([board, ...rest]: Model['pages'], made: (page: TracePage) => TracePage): Model['pages'] {
  return [board, ...rest.map((page) => (page.page === 'trace' ? made(page) : page))];
}

function typedBy({ now, by }: Model) {
  return { at: instant(Math.floor(now / 1000) * 1000), ...(by === null ? {} : { by }) };
}

function asked(model: Model, page: TracePage, drafts: readonly Draft[]): Step {
  return [withTop(model, { ...page, asked: { drafts, ids: null } }), [{ do: 'save', drafts }]];
}
