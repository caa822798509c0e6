import type { Draft } from '../../logbook/entries.ts';
import type { Listed } from '../../logbook/newest-first.ts';
import type { Result, Trouble } from '../../trouble.ts';
import type { Act } from '../../words/cautions.ts';
import { nameOf } from '../../words/names.ts';
import type { Flooding } from '../../words/trace-document.ts';
import type { Field } from '../field.ts';
import type { Loaded } from '../model.ts';
import type { ShownItem } from '../shown-item.ts';
import type { Sight } from '../sight.ts';
import type { FormName } from './table.ts';

/** A short form that becomes entries of the log: what it asks, and what it says before hands are laid on anything. */
export interface FormKind {
  /** In capitals, before the name of what it is about. */
  readonly title: string;
  /** Whether it can be filled in about the thing; null for the boat as a whole. */
  readonly offered: (thing: About) => boolean;
  /** Whether it can be filled in about an entry of the log; absent where it is about items or the boat. */
  readonly ofEntry?: (listed: Listed, loaded: Loaded) => boolean;
  readonly rows: (sight: Sight, about: string) => readonly FormRow[];
  /** What is to be logged, from the rows that were filled in. */
  readonly entries: (typed: Typed, about: string, sight: Sight) => readonly TypedEntry[];
  /** What it takes from the stores, what it unsettles: sentences, each said as it stands. */
  readonly notes: (sight: Sight, about: string) => readonly string[];
  /** Where nothing is logged by it: what the trace it was opened from makes of what was typed. */
  readonly worksOut?: (typed: Typed) => Result<Flooding>;
  /** What hands are laid on for, to be cautious about; absent where none are. */
  readonly act?: Act | ((sight: Sight, about: string) => Act | null);
}

/** An item, an engine, or, where null, the boat as a whole. */
export type About = ShownItem | { readonly kind: 'engine'; readonly id: string } | null;

/** What was typed, by field; rows left empty are absent. */
export type Typed = { readonly [field: string]: string };
/** An entry as `record` takes it: its kind, and its fields as people type them. */
type TypedEntry = { readonly kind: string } & Typed;

/** One line to fill in. */
export interface FormRow {
  /** The field of the entry it becomes. */
  readonly field: string;
  readonly label: string;
  /** What can be typed. */
  readonly example: string;
  /** What it is where nothing is typed; null where something must be. */
  readonly usual: string | null;
  /** Things to choose from, each by the beginning of its name or id. */
  readonly choices?: readonly Choice[];
  /** Nothing else can stand there; absent where the log takes other names too, or tells of them itself. */
  readonly onlyThese?: true;
}

export interface Choice {
  readonly id: string;
  readonly name: string;
}

/** When it happened: the last row of nearly every form. */
export const WHEN: FormRow = {
  field: 'at',
  label: 'when',
  example: '07:40, yesterday 18:00, 3 h ago',
  usual: 'now',
};

/** The choice of nothing. */
export const NONE: Choice = { id: 'none', name: 'none' };

/** The checks that work on it leaves to be made again. */
export function unsettledNotes(sight: Sight, about: string): string[] {
  const { boat } = sight.boat.loaded;
  const found = [...boat.anodes, ...boat.services].find(({ id }) => id === about);
  return (found?.unsettles ?? []).map((check) => `To be looked at again after it: ${nameOf(boat, check)}.`);
}

export interface FormPage {
  readonly page: 'form';
  readonly from: number;
  readonly form: FormName;
  /** The id of the item or entry it is about; empty for the boat as a whole. */
  readonly about: string;
  /** One a row, in order. */
  readonly fields: readonly Field[];
  /** The row that is typed in. */
  readonly at: number;
  /** What was wrong at the last Enter. */
  readonly told: readonly Trouble[];
  /** Doubts were told: Enter again saves it as it stands. */
  readonly insisted: boolean;
  /** What is on its way to the disk; null while nothing is. */
  readonly saving: readonly Draft[] | null;
}
