import type { Pass } from '../../condition/round.ts';
import type { Draft } from '../../logbook/entries.ts';
import type { Trouble } from '../../trouble.ts';
import type { VerdictDocument } from '../../words/document.ts';
import type { LookDocument } from '../../words/round-document.ts';
import type { Field } from '../field.ts';
import type { Loaded } from '../model.ts';

/** The morning round: one row a look that is due. */
export interface RoundPage {
  readonly page: 'round';
  /** Lines it was scrolled on from the row in hand. */
  readonly from: number;
  /** What was due when the round began, in walking order: rows stay while entries come in. */
  readonly rows: readonly RoundRow[];
  /** The boat as the round began: what is typed is read against it, however much of the round is saved already. */
  readonly ground: Loaded;
  /** The row in hand; -1 the time of the round, past the last the end of the page. */
  readonly at: number;
  /** What is typed, by row; and the time under `TIME`. */
  readonly fields: { readonly [row: string]: Field };
  /** The moment of the whole round, ms since 1970 UTC; null is the clock. */
  readonly when: number | null;
  /** What was wrong at the last Enter, in the row in hand; `insisted`: doubts were told, Enter again saves it. */
  readonly told: { readonly troubles: readonly Trouble[]; readonly insisted: boolean } | null;
  /** What stood in the way of the disk, by row. */
  readonly failed: { readonly [row: string]: readonly Trouble[] };
  /** What was entered in this round, oldest first, without what was struck. */
  readonly batches: readonly Batch[];
  /** The answer as the round began, and as it last came; null until there is one. */
  readonly began: VerdictDocument | null;
  readonly latest: VerdictDocument | null;
  /** Escape was pressed over text that is not saved: the next one leaves. */
  readonly leaving: boolean;
}

export interface RoundRow {
  readonly pass: Pass;
  readonly look: LookDocument;
  readonly last: Last | null;
}

/** What was found last, to be unchanged from: file units, or yes or no. */
export type Last =
  | { readonly is: 'amount'; readonly value: number; readonly off?: 'below' | 'above' }
  | { readonly is: 'answer'; readonly ok: boolean };

/** What one Enter, or one `a`, entered. */
export interface Batch {
  /** All of them, as they were asked to be saved: the answer names them by identity. */
  readonly drafts: readonly Draft[];
  /** When it was pressed, ms since 1970 UTC. */
  readonly at: number;
  readonly looks: readonly Entered[];
  /** What it did to the boat's score; null until that is worked out; `with next` where it was worked out together with what came after it. */
  readonly score: { readonly before: number; readonly after: number } | 'with next' | null;
}

/** A row that was entered. */
export interface Entered {
  readonly row: string;
  /** As it was typed: back in its row where it could not be saved. */
  readonly text: string;
  readonly drafts: readonly Draft[];
  /** The ids in the log; null while it is on its way there. */
  readonly ids: readonly string[] | null;
  /** `wanted`: to be struck as soon as it has its ids; else the strikes on their way. */
  readonly strike: 'wanted' | readonly Draft[] | null;
}

/** The name of the row of the time: no id has a space in it. */
export const TIME = 'the time';

/** The name of the row in hand; null at the end of the page. */
export function rowInHand({ at, rows }: RoundPage): string | null {
  return at < 0 ? TIME : (rows[at]?.look.id ?? null);
}

/** How a row stands in the log, or is on its way there; null for a row not looked at. */
export function enteredAt(page: RoundPage, row: string): { batch: Batch; entered: Entered } | null {
  for (const batch of page.batches.toReversed()) {
    const entered = batch.looks.find((look) => look.row === row && look.strike === null);
    if (entered) return { batch, entered };
  }
  return null;
}
