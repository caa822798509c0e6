import type { Trouble } from '../trouble.ts';

/** What is said of a trouble; `troubles.ts` puts it in its form. */
export interface Wording {
  /** What is so, without its place: lower case, no full stop. */
  readonly title: string;
  /** What would be right, in sentences. */
  readonly right?: string;
  /** Something to type or to do. */
  readonly attempt?: string;
  /** A text to be shown as it stands: a line of the log, an entry that was not saved. */
  readonly text?: string;
}

/** The words of every kind of trouble in a family: leave one out and the compiler says so. */
export type WordsOf<T extends Trouble> = {
  readonly [K in T['kind']]: (trouble: Extract<T, { kind: K }>) => Wording;
};
