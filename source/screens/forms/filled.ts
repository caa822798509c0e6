import type { Draft } from '../../logbook/entries.ts';
import { bad, good, type Result, type Trouble } from '../../trouble.ts';
import { typedDraft } from '../../words/typed-draft.ts';
import { beginsIn } from '../begins.ts';
import { entryOf } from '../log/rows.ts';
import type { Sight } from '../sight.ts';
import type { Choice, FormPage, FormRow, Typed } from './form.ts';
import { forms } from './table.ts';

/** A form with its rows at hand. */
export interface OpenForm {
  readonly page: FormPage;
  readonly rows: readonly FormRow[];
}

/** Null once the boat no longer has the thing it is about. */
export function openForm(sight: Sight, page: FormPage): OpenForm | null {
  const { about } = page;
  const { loaded } = sight.boat;
  const known = [...sight.items, ...loaded.boat.engines, { id: '' }].some(({ id }) => id === about);
  return known || entryOf(loaded, about) ? { page, rows: forms[page.form].rows(sight, about) } : null;
}

/** The rows that must be filled in and are not. */
export function wanting({ page, rows }: OpenForm): readonly number[] {
  return rows.flatMap((row, index) => (row.usual === null && textAt(page, index) === '' ? [index] : []));
}

/** What the form becomes as it stands, or all that is wrong with it. */
export function filled(sight: Sight, open: OpenForm): Result<readonly Draft[]> {
  const { page, rows } = open;
  const { model } = sight;
  const typed = typedIn(page, rows);
  const drafts: Draft[] = [];
  const troubles: Trouble[] = strangersIn(open);
  for (const { kind, ...fields } of forms[page.form].entries(typed, page.about, sight)) {
    const words = [kind!, ...Object.entries(fields).map(([field, text]) => `${field}=${text}`)];
    const read = typedDraft(words, {
      loaded: sight.boat.loaded,
      now: model.now,
      zone: model.zone,
      by: model.by,
    });
    drafts.push(...read.asked.map(({ draft }) => draft));
    troubles.push(...read.troubles);
  }
  return troubles.length > 0 ? bad(...troubles) : good(drafts);
}

/** What is none of the choices, where nothing else can stand. */
function strangersIn({ page, rows }: OpenForm): Trouble[] {
  return rows.flatMap(({ field, choices, onlyThese, example }, index): Trouble[] => {
    const text = textAt(page, index);
    if (!choices || !onlyThese || text === '') return [];
    const found = choices.some(({ id }) => id === chosen(text, choices));
    const expected = 'the beginning of one of their names';
    return found ? [] : [{ kind: 'not understood', field, text, expected, example }];
  });
}

/** What was typed, by field; a choice by its id. */
export function typedIn(page: FormPage, rows: readonly FormRow[]): Typed {
  return Object.fromEntries(
    rows.flatMap(({ field, choices }, index) => {
      const text = textAt(page, index);
      return text === '' ? [] : [[field, choices ? chosen(text, choices) : text]];
    }),
  );
}

/** The one choice whose id or name begins so; else what was typed, to be told as unknown. */
function chosen(text: string, choices: readonly Choice[]): string {
  const begun = text.toLocaleLowerCase();
  const exact = choices.find(({ id, name }) => id === begun || name.toLocaleLowerCase() === begun);
  if (exact) return exact.id;
  const found = choices.filter(({ id, name }) => id.startsWith(begun) || beginsIn(name, begun));
  return found.length === 1 ? found[0]!.id : text;
}

function textAt({ fields }: FormPage, index: number): string {
  return fields[index]?.text.trim() ?? '';
}
