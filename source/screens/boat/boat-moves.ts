import type { BoatChange } from '../../boat/change.ts';
import { isList } from '../../boat/parts.ts';
import { cannotRetire } from '../../boat/would-be.ts';
import type { Result, Trouble } from '../../trouble.ts';
import { sayShortly } from '../../words/troubles.ts';
import { fieldWith } from '../field.ts';
import { type Model, type Page, pageOf, type Step, turnedTo, withTop } from '../model.ts';
import { type BoatPage, type Part, partsOf, rowsOf } from './part.ts';

export function openBoat(model: Model): Step {
  if (model.boat.is !== 'open') return [model, []];
  return [turnedTo(model, { page: 'boat', from: 0, at: 0, going: null, told: [] }), []];
}

export function toPart(by: number): (model: Model) => Step {
  return withPage((model, page, parts) => {
    const at = Math.max(0, Math.min(parts.length - 1, page.at + by));
    return [withTop(model, { ...page, at, going: null, told: [] }), []];
  });
}

/** To the first of the next kind, or of the one before. */
export function toKind(by: 1 | -1): (model: Model) => Step {
  return withPage((model, page, parts) => {
    const firsts = parts.flatMap(({ kind }, at) => (kind === parts[at - 1]?.kind ? [] : [at]));
    const here = firsts.findLastIndex((first) => first <= page.at);
    const at = firsts[Math.max(0, Math.min(firsts.length - 1, here + by))]!;
    return [withTop(model, { ...page, at, going: null, told: [] }), []];
  });
}

/** Turns to the lines of the part chosen. */
export const changePart = withPage((model, page, parts) => openPart(model, page, parts[page.at], 'change'));
/** The same, empty, for another of its kind. */
export const addPart = withPage((model, page, parts) => openPart(model, page, parts[page.at], 'add'));

/** Takes the part out of the boat file at the second time: it leaves the sums, its entries stay. What others name stays. */
export const retirePart = withPage((model, page, parts) => {
  const part = parts[page.at];
  if (model.boat.is !== 'open' || !part) return [model, []];
  const { boat, readOnly } = model.boat.loaded;
  if (part.id === null)
    return isList(part.kind) ? [model, []] : noted(model, `${part.name} cannot be retired`);
  const change: BoatChange = { kind: part.kind, id: part.id, how: 'retire', set: [] };
  const told = readOnly ? [readOnly] : cannotRetire(boat, change);
  if (told.length > 0) return [withTop(model, { ...page, going: null, told }), []];
  if (page.going !== part.id)
    return noted(
      withTop(model, { ...page, going: part.id, told: [] }),
      `x again retires ${part.name}; its entries stay in the log`,
    );
  return [
    withTop(model, { ...page, going: null, told: [] }),
    [{ do: 'change boat', change, what: `retired: ${part.name}` }],
  ];
});

/** The part's page closes once it is written; else it stays as it was typed, with all that stood in the way. */
export function boatChanged(model: Model, what: string, result: Result<null>): Step {
  const [board, ...rest] = model.pages;
  if (result.ok) {
    const pages = rest.filter((page) => !(page.page === 'boat item' && page.saving));
    return [{ ...model, pages: [board, ...pages], notice: what }, [{ do: 'load' }]];
  }
  const { troubles } = result;
  const isShown = rest.some(({ page }) => page === 'boat item' || page === 'boat');
  const pages: Model['pages'] = [board, ...rest.map((page) => withTold(page, troubles))];
  const notice = isShown ? null : `not done: ${sayShortly(troubles[0]!)}`;
  const isElsewhere = troubles.some(({ kind }) => kind === 'changed meanwhile' || kind === 'id twice');
  return [{ ...model, pages, notice }, isElsewhere ? [{ do: 'load' }] : []];
}

function withTold(page: Page, told: readonly Trouble[]): Page {
  if (page.page === 'boat') return { ...page, told };
  if (page.page !== 'boat item' || !page.saving) return page;
  const over = told.some((trouble) => trouble.kind === 'changed meanwhile' && trouble.field !== null);
  return { ...page, saving: false, told, over };
}

function openPart(model: Model, page: BoatPage, part: Part | undefined, how: 'add' | 'change'): Step {
  if (model.boat.is !== 'open' || !part) return [model, []];
  const { boat, readOnly } = model.boat.loaded;
  if (readOnly) return [withTop(model, { ...page, told: [readOnly] }), []];
  const { kind } = part;
  if (how === 'add' && !isList(kind)) return noted(model, 'there is but one: Enter changes it');
  const isNew = how === 'add' || (isList(kind) && part.id === null);
  const id = isNew ? null : part.id;
  const { rows, texts, before } = rowsOf(boat, kind, id);
  return [
    turnedTo(model, {
      page: 'boat item',
      from: 0,
      kind,
      id,
      how: isNew ? 'add' : 'change',
      of: boat,
      rows,
      fields: texts.map(fieldWith),
      before,
      at: 0,
      wrong: [],
      told: [],
      asked: false,
      over: false,
      saving: false,
      typed: false,
      leaving: false,
    }),
    [],
  ];
}

function noted(model: Model, notice: string): Step {
  return [{ ...model, notice }, []];
}

function withPage(
  move: (model: Model, page: BoatPage, parts: readonly Part[]) => Step,
): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'boat' || model.boat.is !== 'open') return [model, []];
    return move(model, page, partsOf(model.boat.loaded.boat));
  };
}
