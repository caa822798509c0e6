import { type Field, pastedIn, typedIn } from './field.ts';
import { type Model, type Page, pageOf, withTop } from './model.ts';
import { fieldInHand, isForTable, withField as withRoundField } from './round/round.ts';

/** The field that is typed in; null where letters are keys. */
function fieldOf(page: Page): Field | null {
  if (page.page === 'round') return fieldInHand(page);
  return page.page === 'form' && page.saving === null ? (page.fields[page.at] ?? null) : null;
}

/** The model after a key that belongs to the field on top; null where it is for the key table. In an empty field `?` asks for the keys. */
export function typedInto(model: Model, key: string): Model | null {
  const page = pageOf(model);
  const field = fieldOf(page);
  if (!field || (key === '?' && field.text === '')) return null;
  if (page.page === 'round' && isForTable(page, key)) return null;
  const typed = typedIn(field, key);
  return typed && withField(model, typed);
}

/** The model after a paste; null where there is no field. */
export function pastedInto(model: Model, text: string): Model | null {
  const field = fieldOf(pageOf(model));
  return field && withField(model, pastedIn(field, text));
}

/** What was told of the field before no longer holds. */
function withField(model: Model, field: Field): Model {
  const page = pageOf(model);
  if (page.page === 'round') return withTop(model, withRoundField(page, field));
  if (page.page !== 'form') return model;
  const fields = page.fields.with(page.at, field);
  return withTop(model, { ...page, fields, told: [], insisted: false });
}
