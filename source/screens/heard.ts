import type { Content } from '../forecast/content.ts';
import { type DayRow, dayRows } from '../forecast/day-rows.ts';
import type { Problem } from '../forecast/forecast.ts';
import { askTrouble } from '../forecast/recognise.ts';
import { MOST_ROWS, readTyped } from '../forecast/typed.ts';
import { type RowFigures, readRow } from '../forecast/typed-row.ts';
import type { Trouble } from '../trouble.ts';
import { momentFrom } from '../words/moments.ts';
import { bareUnits } from '../words/preferred.ts';
import type { Field } from './field.ts';

/** Rows offered however few are filled: three days and nights. */
const LEAST_ROWS = 6;

/** The page on which a forecast is typed as it is heard. */
export interface HeardPage {
  readonly page: 'heard';
  readonly from: number;
  /** The moment from which the rows are labelled: it does not move while one types. */
  readonly since: number;
  /** When it was issued, then a row for each day and night. */
  readonly fields: readonly Field[];
  /** The one typed in. */
  readonly at: number;
  /** All is typed: Enter again takes it in. */
  readonly ready: boolean;
  /** What stood in the way of taking it in. */
  readonly told: readonly Trouble[];
  /** On its way to the disk; null while nothing is. */
  readonly saving: Content | null;
}

/** A day or a night, what was typed for it, and what was understood. */
export interface HeardRow extends DayRow {
  readonly text: string;
  /** Null where nothing was heard or nothing understood. */
  readonly figures: RowFigures | null;
  readonly troubles: readonly Trouble[];
  readonly problems: readonly Problem[];
}

export interface Heard {
  readonly issuedAt: number | null;
  readonly rows: readonly HeardRow[];
  /** What is odd about the whole. */
  readonly problems: readonly Problem[];
  /** All of it, once there is nothing left to ask or to put right. */
  readonly content: Content | null;
}

/** How many days and nights are offered: those filled and two more. */
export function rowsFor(fields: readonly Field[]): number {
  const last = fields.findLastIndex(({ text }, index) => index > 0 && text.trim() !== '');
  return Math.min(MOST_ROWS, Math.max(LEAST_ROWS, last + 2));
}

/** Everything typed, read as it stands. */
export function heardOn({ fields, since }: HeardPage, zone: string): Heard {
  const [issued, ...typed] = fields.map(({ text }) => text.trim());
  const times = dayRows(since, zone, typed.length);
  const issuedAt = issued === undefined || issued === '' ? null : momentFrom(issued, since, zone);
  const given = { now: since, timeZone: zone, bare: bareUnits() };
  const read = readTyped(typed, { ...given, ...(issuedAt === null ? {} : { issuedAt }) });
  let above: RowFigures | null = null;
  const rows = typed.map((text, index) => {
    const row = readRow(text, { row: index + 1, above, bare: given.bare });
    const time = times[index]!;
    if (!row.ok) return { ...time, text, figures: null, troubles: row.troubles };
    const { figures, ask } = row.value;
    above = figures ?? above;
    const asks = ask ? [askTrouble({ what: 'direction', row: index + 1, ...ask })] : [];
    return { ...time, text, figures, troubles: asks };
  });
  // What is odd is told of the rows that are understood, whatever is still wanting of the others, and without an issue time.
  const sound = rows.map(({ text, troubles }) => (troubles.length > 0 ? '.' : text));
  const problems = contentOf(readTyped(sound, { ...given, issuedAt: issuedAt ?? since }))?.problems ?? [];
  const labels = new Set(rows.map(({ label }) => label));
  return {
    issuedAt,
    rows: rows.map((row) => ({ ...row, problems: problems.filter(({ where }) => where === row.label) })),
    problems: problems.filter(({ where }) => !labels.has(where)),
    content: contentOf(read),
  };
}

function contentOf(read: ReturnType<typeof readTyped>): Content | null {
  return read.ok && 'content' in read.value ? read.value.content : null;
}
