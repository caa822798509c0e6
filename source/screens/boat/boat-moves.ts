import type { BoatChange } from '../../boat/change.ts';
import { itemFields } from '../../boat/item-fields.ts';
import type { Result } from '../../trouble.ts';
import { fieldWith } from '../field.ts';
import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { type BoatItemPage, type BoatPage, partsOf, textsOf, valuesOf } from './boat.ts';

const READ_ONLY = 'nothing can be saved here: ! says what stands in the way';

export function openBoat(model: Model): Step {
  if (model.boat.is !== 'open') return [model, []];
  return [turnedTo(model, { page: 'boat', from: 0, at: 0, going: null }), []];
}

export function toPart(by: number): (model: Model) => Step {
  return withPage((model, page, count) => {
    const at = Math.max(0, Math.min(count - 1, page.at + by));
    return [withTop(model, { ...page, at, going: null }), []];
  });
}

/** Turns to the fields of the item chosen. */
export const changePart = withPage((model, page) => openItem(model, page, 'change'));
/** The same, empty, for another of its kind. */
export const addPart = withPage((model, page) => openItem(model, page, 'add'));

/** Takes the item out of the boat file at the second time: it leaves the sums, its entries stay. */
export const retirePart = withPage((model, page) => {
  if (model.boat.is !== 'open') return [model, []];
  if (model.boat.loaded.readOnly) return [{ ...model, notice: READ_ONLY }, []];
  const part = partsOf(model.boat.loaded.boat)[page.at];
  if (part?.id == null) return [model, []];
  if (page.going !== part.id)
    return [
      {
        ...withTop(model, { ...page, going: part.id }),
        notice: `x again retires ${part.name}; its entries stay in the log`,
      },
      [],
    ];
  const change: BoatChange = { kind: part.kind, id: part.id, how: 'retire', set: [] };
  return [
    withTop(model, { ...page, going: null }),
    [{ do: 'change boat', change, what: `retired: ${part.name}` }],
  ];
});

export function toBoatField(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'boat item') return [model, []];
    const rows = page.fields.length;
    return [withTop(model, { ...page, at: (page.at + by + rows) % rows }), []];
  };
}

/** Writes what was changed into the boat file; or says what cannot stand there. */
export function saveItem(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'boat item' || page.saving || model.boat.is !== 'open') return [model, []];
  const texts = page.fields.map(({ text }) => text);
  const read = valuesOf(page.kind, texts);
  if ('trouble' in read) return [withTop(model, { ...page, at: read.at, told: [read.trouble] }), []];
  const touched = touchedFields(page, texts);
  const set = read.set.filter(({ value }, at) => (page.id === null ? value !== undefined : touched.has(at)));
  if (set.length === 0) return [turnedBack(model), []];
  const name = texts[itemFields(page.kind).findIndex(({ path }) => path[0] === 'name')] ?? '';
  const id = page.id ?? freeId(name, model.boat.loaded.boat);
  const change: BoatChange = { kind: page.kind, id, how: page.id === null ? 'add' : 'change', set };
  return [
    withTop(model, { ...page, told: [], saving: true }),
    [{ do: 'change boat', change, what: `saved in boat.json: ${name}` }],
  ];
}

/** The item's page closes once it is written; else it stays as it was typed, with what stood in the way. */
export function boatChanged(model: Model, what: string, result: Result<null>): Step {
  const [board, ...rest] = model.pages;
  if (result.ok) {
    const pages = rest.filter((page) => !(page.page === 'boat item' && page.saving));
    return [{ ...model, pages: [board, ...pages], notice: what }, [{ do: 'load' }]];
  }
  const told = rest.map((page) =>
    page.page === 'boat item' ? { ...page, saving: false, told: result.troubles } : page,
  );
  const pages: Model['pages'] = [board, ...told];
  const isItem = told.some((page) => page.page === 'boat item');
  return [
    {
      ...model,
      pages,
      notice: isItem ? null : 'the boat file would be in trouble without it: something else names it',
    },
    [],
  ];
}

function openItem(model: Model, page: BoatPage, how: 'add' | 'change'): Step {
  if (model.boat.is !== 'open') return [model, []];
  const { boat, readOnly } = model.boat.loaded;
  if (readOnly) return [{ ...model, notice: READ_ONLY }, []];
  const part = partsOf(boat)[page.at];
  if (!part) return [model, []];
  const id = how === 'add' ? null : part.id;
  const before = textsOf(boat, part.kind, id);
  const fields = before.map(fieldWith);
  return [
    turnedTo(model, {
      page: 'boat item',
      from: 0,
      kind: part.kind,
      id,
      fields,
      before,
      at: 0,
      told: [],
      saving: false,
    }),
    [],
  ];
}

function withPage(move: (model: Model, page: BoatPage, count: number) => Step): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'boat' || model.boat.is !== 'open') return [model, []];
    return move(model, page, partsOf(model.boat.loaded.boat).length);
  };
}

/** A usual figure and its bad day are two ways of one spread: one changed, both are written. */
function touchedFields(page: BoatItemPage, texts: readonly string[]): ReadonlySet<number> {
  const fields = itemFields(page.kind);
  const changed = fields.flatMap(({ path }, at) => (texts[at] !== page.before[at] ? [path] : []));
  const touched = new Set<number>();
  for (const [at, { path }] of fields.entries())
    if (
      changed.some(
        (one) =>
          one.join() === path.join() ||
          (path.length > 2 &&
            isSpread(path) &&
            isSpread(one) &&
            one.slice(0, -1).join() === path.slice(0, -1).join()),
      )
    )
      touched.add(at);
  return touched;
}

function isSpread(path: readonly string[]): boolean {
  return path.at(-1) === 'mean' || path.at(-1) === 'sd';
}

function freeId(name: string, boat: Parameters<typeof partsOf>[0]): string {
  const taken = new Set(partsOf(boat).map(({ id }) => id));
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .slice(0, 50)
    .replace(/^-+|-+$/gu, '');
  const base = plain || 'item';
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!taken.has(id)) return id;
  }
}
