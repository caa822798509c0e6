import type { Trouble } from '../../trouble.ts';
import { type Kept, type PreferenceField, preferenceFields } from '../../words/preference-fields.ts';
import { EMPTY, type Field, fieldWith } from '../field.ts';

export interface PreferencesPage {
  readonly page: 'preferences';
  readonly from: number;
  /** The row that is changed. */
  readonly at: number;
  /** What stands in it, where it is a text. */
  readonly field: Field;
  readonly told: readonly Trouble[];
}

export function rowAt({ at }: PreferencesPage): PreferenceField {
  return preferenceFields[at]!;
}

/** The page at a row, its text ready to be changed. */
export function preferencesAt(kept: Kept, row: number): PreferencesPage {
  const at = (row + preferenceFields.length) % preferenceFields.length;
  const { field, choices } = preferenceFields[at]!;
  const text = choices ? '' : (kept[field] ?? '');
  return { page: 'preferences', from: 0, at, field: text === '' ? EMPTY : fieldWith(text), told: [] };
}
