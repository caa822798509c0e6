import type { Trouble } from '../../trouble.ts';
import { type Answered, type Answers, answered } from '../../words/answered.ts';
import type { Clock, NewBoat, Question } from '../../words/new-boat.ts';
import { EMPTY, type Field } from '../field.ts';

/** The interview of a new boat: one line a question, then where her folder is to be, then making it. */
export interface FirstRunPage {
  readonly page: 'first run';
  readonly from: number;
  /** As typed, by field; those taken as they stand are absent. */
  readonly answers: Answers;
  /** What they come to. */
  readonly so: Answered;
  /** The row that is typed in: a question, the folder, or the last, which makes it. */
  readonly at: number;
  readonly field: Field;
  readonly told: readonly Trouble[];
  /** Esc was pressed once: the second leaves. */
  readonly leaving: boolean;
  /** What is being made; null while nothing is. */
  readonly making: NewBoat | 'sample' | null;
}

export function firstRun(clock: Clock, told: readonly Trouble[]): FirstRunPage {
  const so = answered({}, clock);
  return {
    page: 'first run',
    from: 0,
    answers: {},
    so,
    at: 0,
    field: EMPTY,
    told,
    leaving: false,
    making: null,
  };
}

export const FOLDER = 'folder';

/** One row: a question of the interview, or one of the two rows behind them. */
export type Row =
  | { readonly is: 'question'; readonly question: Question; readonly field: string }
  | { readonly is: 'folder'; readonly field: typeof FOLDER }
  | { readonly is: 'make'; readonly field: 'make' };

export function rowsOf({ so }: FirstRunPage): readonly Row[] {
  const questions = so.questions.map(
    (question): Row => ({ is: 'question', question, field: question.field }),
  );
  return [...questions, { is: 'folder', field: FOLDER }, { is: 'make', field: 'make' }];
}

export function rowAt(page: FirstRunPage): Row {
  return rowsOf(page)[page.at] ?? { is: 'make', field: 'make' };
}

/** Where her folder is made: as typed, else by her name in the home folder. */
export function folderOf({ answers, so }: FirstRunPage): string {
  return answers[FOLDER] ?? `~/${slug(so.boat.answers.name)}`;
}

/** The first row that stands in the way of making her; null where none does. */
export function firstWrong(page: FirstRunPage): number | null {
  const at = rowsOf(page).findIndex(({ field }) => Object.hasOwn(page.so.troubles, field));
  return at < 0 ? null : at;
}

function slug(name: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .slice(0, 40);
  return plain.replace(/^-+|-+$/gu, '') || 'boat';
}
