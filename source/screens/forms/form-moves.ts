import type { Result } from '../../trouble.ts';
import { doubtsAbout } from '../../words/doubts.ts';
import type { Flooding } from '../../words/trace-document.ts';
import { EMPTY } from '../field.ts';
import { chosenRow } from '../log/log-moves.ts';
import { CANNOT_SAVE } from '../looking-only.ts';
import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { shownItems } from '../shown-item.ts';
import { sightOf } from '../sight.ts';
import { storeInHand } from '../stores/stores-moves.ts';
import { tracedThing } from '../trace/open-trace.ts';
import { filled, type OpenForm, openForm, typedIn, wanting } from './filled.ts';
import type { About, FormKind, FormPage } from './form.ts';
import { type FormName, forms } from './table.ts';

/** The item or engine a key would be about, that of the page on top or the store in hand; null for the boat as a whole. */
function aboutOf(model: Model): About {
  if (model.boat.is !== 'open') return null;
  const about = tracedThing(model) ?? storeInHand(model);
  const engine = model.boat.loaded.boat.engines.find(({ id }) => id === about);
  if (engine) return { kind: 'engine', id: engine.id };
  return shownItems(model.boat).find(({ id }) => id === about) ?? null;
}

/** Whether the form can be filled in where the model is: about what is in hand, or about the boat. */
export function isOffered(form: FormName): (model: Model) => boolean {
  return (model) => {
    const row = chosenRow(model);
    const kind: FormKind = forms[form];
    if (row && model.boat.is === 'open')
      return row.is === 'entry' && (kind.ofEntry?.(row, model.boat.loaded) ?? false);
    const item = aboutOf(model);
    const ofTheBoat = ['board', 'weather'].includes(pageOf(model).page);
    return (item !== null || ofTheBoat) && forms[form].offered(item);
  };
}

/** Whether the form on top becomes entries of the log. */
export function isSaved(model: Model): boolean {
  const page = pageOf(model);
  if (page.page !== 'form') return false;
  const kind: FormKind = forms[page.form];
  return kind.worksOut === undefined;
}

/** Opens a form about what is in hand; where nothing can be saved, says why instead. */
export function fillIn(form: FormName): (model: Model) => Step {
  return (model) => {
    const sight = sightOf(model);
    if (model.boat.is !== 'open' || !sight) return [model, []];
    if (model.boat.loaded.readOnly) return [{ ...model, notice: CANNOT_SAVE }, []];
    const row = chosenRow(model);
    const about = row?.is === 'entry' ? row.entry.id : (aboutOf(model)?.id ?? '');
    const fields = forms[form].rows(sight, about).map(() => EMPTY);
    return [turnedTo(model, newForm(form, about, fields)), []];
  };
}

function newForm(form: FormName, about: string, fields: FormPage['fields']): FormPage {
  return { page: 'form', from: 0, form, about, fields, at: 0, told: [], insisted: false, saving: null };
}

/** To the next row or the one before, round and round. */
export function toRow(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'form') return [model, []];
    const rows = page.fields.length;
    return [withTop(model, { ...page, at: (page.at + by + rows) % rows }), []];
  };
}

/** Saves the form; or goes to the first row that wants filling in, or says what is wrong. What is in doubt is asked about once. */
export function enter(model: Model): Step {
  const page = pageOf(model);
  const sight = sightOf(model);
  if (page.page !== 'form' || !sight || page.saving) return [model, []];
  const open = openForm(sight, page);
  if (!open) return [model, []];
  const [first] = wanting(open);
  if (first !== undefined)
    return [{ ...withTop(model, { ...page, at: first }), notice: `${open.rows[first]!.label}?` }, []];
  const { worksOut }: FormKind = forms[page.form];
  if (worksOut) return workedOut(model, open, worksOut(typedIn(page, open.rows)));
  const read = filled(sight, open);
  if (!read.ok) return [withTop(model, { ...page, at: rowOf(open, read.troubles), told: read.troubles }), []];
  const drafts = read.value;
  const doubts = doubtsAbout(
    drafts.map((draft) => ({ draft })),
    sight.boat.loaded,
    model.now,
    page.insisted,
  );
  if (doubts.length > 0) return [withTop(model, { ...page, told: doubts, insisted: true }), []];
  return [withTop(model, { ...page, told: [], saving: drafts }), [{ do: 'save', drafts }]];
}

/** Back to the trace, with what was worked out; or what is wrong with what was typed. */
function workedOut(model: Model, open: OpenForm, result: Result<Flooding>): Step {
  const { page } = open;
  if (!result.ok)
    return [withTop(model, { ...page, at: rowOf(open, result.troubles), told: result.troubles }), []];
  const back = turnedBack(model);
  const trace = pageOf(back);
  return [trace.page === 'trace' ? withTop(back, { ...trace, from: 0, flooding: result.value }) : back, []];
}

/** The row the first trouble is about, else the one typed in. */
function rowOf({ page, rows }: OpenForm, troubles: readonly { readonly kind: string }[]): number {
  const fields = troubles.flatMap((trouble) => ('field' in trouble ? [trouble.field] : []));
  const found = rows.findIndex(({ field }) => fields.includes(field));
  return found < 0 ? page.at : found;
}
