import { withTyped } from './boat/boat-item-moves.ts';
import { EMPTY, type Field, pastedIn, typedIn } from './field.ts';
import { rowAt } from './first-run/first-run.ts';
import { rowsFor } from './heard.ts';
import { type Model, type Page, pageOf, withTop } from './model.ts';
import { rowAt as preferenceAt } from './preferences/preferences.ts';
import { roundField, withRoundField } from './round/round-field.ts';

/** The field that is typed in; null where letters are keys. */
function fieldOf(page: Page): Field | null {
  if (page.page === 'round') return roundField(page);
  if (page.page === 'first run') return page.making || rowAt(page).is === 'make' ? null : page.field;
  if (page.page === 'log') return page.finding ? page.find : null;
  if (page.page === 'boat item') return page.saving ? null : (page.fields[page.at] ?? null);
  if (page.page === 'preferences') return preferenceAt(page).choices ? null : page.field;
  if (page.page === 'stores') return page.shopping ? null : page.find;
  const typed = page.page === 'form' || page.page === 'heard';
  return typed && page.saving === null ? (page.fields[page.at] ?? null) : null;
}

/** Keys of a page that its field leaves alone. */
const LEFT_ALONE: { readonly [page in Page['page']]?: readonly string[] } = {
  stores: ['+', '=', 'left', 'right', 'home', 'end'],
};

/** The model after a key that belongs to the field on top; null where it is for the key table. In an empty field some letters are keys. */
export function typedInto(model: Model, key: string): Model | null {
  const page = pageOf(model);
  const field = fieldOf(page);
  if (!field || (field.text === '' && keysIn(page).includes(key)) || LEFT_ALONE[page.page]?.includes(key))
    return null;
  const typed = typedIn(field, key);
  return typed && withField(model, typed);
}

/** The letters that are keys in an empty field. */
function keysIn({ page }: Page): readonly string[] {
  return page === 'round' ? ['?', 'a', 'u'] : ['?'];
}

/** The model after a paste; null where there is no field. */
export function pastedInto(model: Model, text: string): Model | null {
  const field = fieldOf(pageOf(model));
  return field && withField(model, pastedIn(field, text));
}

/** What was told of the field before, or chosen by it, no longer holds. */
function withField(model: Model, field: Field): Model {
  const page = pageOf(model);
  if (page.page === 'round') return withTop(model, withRoundField(page, field));
  if (page.page === 'first run') return withTop(model, { ...page, field, told: [], leaving: false });
  if (page.page === 'boat item') return withTop(model, withTyped(page, field));
  if (page.page === 'preferences') return withTop(model, { ...page, field, told: [] });
  if (page.page === 'heard') {
    const fields = page.fields.with(page.at, field);
    const rows = 1 + rowsFor(fields);
    const offered = Array.from({ length: Math.max(rows, page.at + 1) }, (_, at) => fields[at] ?? EMPTY);
    return withTop(model, { ...page, fields: offered, told: [], ready: false });
  }
  if (page.page === 'form')
    return withTop(model, { ...page, fields: page.fields.with(page.at, field), told: [], insisted: false });
  if (page.page === 'stores' || page.page === 'log')
    return withTop(model, { ...page, find: field, chosen: null });
  return model;
}
