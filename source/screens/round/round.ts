import type { Pass } from '../../condition/round.ts';
import type { Draft, Entry } from '../../logbook/entries.ts';
import type { Trouble } from '../../trouble.ts';
import type { LookDocument } from '../../words/round-document.ts';
import { EMPTY, type Field } from '../field.ts';

/** The round as it is walked: what was due when it was opened, row by row, and what was saved of it. */
export interface RoundPage {
  readonly page: 'round';
  /** Lines the page was moved on from where the row in hand puts it. */
  readonly from: number;
  readonly rows: readonly RoundRow[];
  /** The row in hand: 0 is when the round was made, then the rows from 1. */
  readonly at: number;
  readonly when: RoundWhen;
  /** In the order they were asked for. */
  readonly saves: readonly Saved[];
  /** The boat score when the round was opened; null where there was none yet. */
  readonly before: number | null;
  /** When it was left; null while it is walked. */
  readonly left: number | null;
}

/** When the round was made: `moment` null is now, entry by entry. */
interface RoundWhen extends Typed {
  readonly moment: number | null;
}

interface Typed {
  readonly field: Field;
  /** What was wrong at the last Enter. */
  readonly told: readonly Trouble[];
  /** Doubts were told: Enter again saves it as it stands. */
  readonly insisted: boolean;
}

export interface RoundRow extends Typed {
  readonly pass: Pass;
  readonly look: LookDocument;
  readonly same: Same;
}

/** The fields of an entry that finds the same again; or, where none can, what must be typed instead and why. */
export type Same =
  | { readonly found: { readonly [field: string]: string | number | boolean } }
  | { readonly not: string };

/** What one row gave the log. Rows saved by one key have one `asked`, all their drafts. */
export interface Saved {
  readonly row: string;
  readonly drafts: readonly Draft[];
  readonly asked: readonly Draft[];
  /** As it stood in the field. */
  readonly typed: string;
  /** Null while on the way to the disk. */
  readonly entries: readonly Entry[] | null;
  readonly struck: boolean;
  /** The strikes on their way or saved. */
  readonly strikes: readonly Draft[] | null;
}

export const UNTYPED: Typed = { field: EMPTY, told: [], insisted: false };

/** What the field in hand holds. */
export function fieldInHand({ at, when, rows }: RoundPage): Field {
  return at === 0 ? when.field : (rows[at - 1]?.field ?? EMPTY);
}

/** The page with the row in hand changed. */
export function withTyped(page: RoundPage, typed: Partial<Typed>): RoundPage {
  const { at, when, rows } = page;
  const row = rows[at - 1];
  if (at === 0) return { ...page, when: { ...when, ...typed } };
  return row ? { ...page, rows: rows.with(at - 1, { ...row, ...typed }) } : page;
}

/** The field in hand after a key or a paste: what was told of it before no longer holds. */
export function withField(page: RoundPage, field: Field): RoundPage {
  return { ...withTyped(page, { field, told: [], insisted: false }), from: 0 };
}

/** What stands saved of a row; null where it was not looked at. */
export function savedOf({ saves }: RoundPage, { look }: RoundRow): Saved | null {
  return saves.findLast(({ row, struck }) => row === look.id && !struck) ?? null;
}

/** Those that do in an empty field what is written of them in the key table; all others are typed. */
const KEYS_WHERE_EMPTY: readonly string[] = ['a', 'u'];

/** Whether the key is for the key table, though there is a field. */
export function isForTable(page: RoundPage, key: string): boolean {
  return KEYS_WHERE_EMPTY.includes(key) && fieldInHand(page).text === '';
}
