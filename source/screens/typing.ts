import { type Field, pastedIn, typedIn } from './field.ts';
import { type Model, type Page, pageOf, withTop } from './model.ts';

/** The field that is typed in; null where letters are keys. */
function fieldOf(page: Page): Field | null {
  if (page.page === 'stores') return page.shopping ? null : page.find;
  if (page.page === 'log') return page.finding ? page.find : null;
  return page.page === 'form' && page.saving === null ? (page.fields[page.at] ?? null) : null;
}

/** Keys of the stores that no name begins with. */
const STORES_KEYS: readonly string[] = ['+', '='];

/** The model after a key that belongs to the field on top; null where it is for the key table. In an empty field `?` asks for the keys. */
export function typedInto(model: Model, key: string): Model | null {
  const field = fieldOf(pageOf(model));
  if (!field || (key === '?' && field.text === '')) return null;
  const typed = typedIn(field, key);
  if (pageOf(model).page === 'stores' && (STORES_KEYS.includes(key) || isStill(field, typed))) return null;
  return typed && withField(model, typed);
}

/** At the end of what is typed, right goes on to the page of what is found. */
function isStill(before: Field, after: Field | null): boolean {
  return after !== null && after.text === before.text && after.caret === before.caret;
}

/** The model after a paste; null where there is no field. */
export function pastedInto(model: Model, text: string): Model | null {
  const field = fieldOf(pageOf(model));
  return field && withField(model, pastedIn(field, text));
}

/** What was told of the field before no longer holds. */
function withField(model: Model, field: Field): Model {
  const page = pageOf(model);
  if (page.page === 'stores') return withTop(model, { ...page, find: field, chosen: null });
  if (page.page === 'log') return withTop(model, { ...page, find: field, chosen: null });
  if (page.page !== 'form') return model;
  const fields = page.fields.with(page.at, field);
  return withTop(model, { ...page, fields, told: [], insisted: false });
}
