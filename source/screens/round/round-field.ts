import { EMPTY, type Field } from '../field.ts';
import { type RoundPage, rowInHand } from './round.ts';

/** The field in hand: the row's, or that of the time; null past the last row. */
export function roundField(page: RoundPage): Field | null {
  const row = rowInHand(page);
  return row === null ? null : (page.fields[row] ?? EMPTY);
}

/** What was told of the field before no longer holds. */
export function withRoundField(page: RoundPage, field: Field): RoundPage {
  const row = rowInHand(page);
  if (row === null) return page;
  const { [row]: _, ...failed } = page.failed;
  return { ...page, fields: { ...page.fields, [row]: field }, failed, told: null, leaving: false, from: 0 };
}

/** What is typed in a row and not entered. */
export function unsavedText(page: RoundPage, row: string): string {
  return (page.fields[row]?.text ?? '').trim();
}
