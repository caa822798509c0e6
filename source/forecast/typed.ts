import { bad, good, type Result, type Trouble } from '../trouble.ts';
import type { Ask, Given, Reading } from './content.ts';
import { dayRows } from './day-rows.ts';
import type { Problem, Step } from './forecast.ts';
import { oddities } from './oddities.ts';
import { type RowFigures, readRow } from './typed-row.ts';

/** Ten days and nights: as far as any forecast goes. */
export const MOST_ROWS = 20;

/**
 * A forecast typed as it was heard: one row for each of the days and nights of `dayRows` from now on, in broadcast order. All rows in trouble are told at once;
 * nothing is taken where one is.
 */
export function readTyped(rows: readonly string[], given: Given): Result<Reading> {
  const typed = rows.slice(0, rows.findLastIndex((row) => row.trim() !== '') + 1);
  if (typed.length > MOST_ROWS) return bad({ kind: 'too many rows', rows: typed.length, most: MOST_ROWS });
  const times = dayRows(given.now, given.timeZone, typed.length);
  const troubles: Trouble[] = [];
  const asks: Ask[] = [];
  const steps: Step[] = [];
  const notRead: { where: string; text: string }[] = [];
  const problems: Problem[] = [];
  let above: RowFigures | null = null;
  let heightsNamed = true;
  for (const [i, text] of typed.entries()) {
    const read = readRow(text, { row: i + 1, above, bare: given.bare });
    if (!read.ok) troubles.push(...read.troubles);
    else if (read.value.figures !== null) {
      const { label, from, to } = times[i]!;
      const { figures, odd, ask } = read.value;
      above = figures;
      heightsNamed &&= read.value.heightsNamed;
      if (ask) asks.push({ what: 'direction', row: i + 1, ...ask });
      steps.push({
        from: new Date(from).toISOString(),
        to: new Date(to).toISOString(),
        label,
        ...figures,
        how: 'typed',
      });
      problems.push(...odd.map((kind) => ({ kind, where: label })));
      notRead.push(...read.value.notRead.map((phrase) => ({ where: label, text: phrase })));
    }
  }
  if (troubles.length > 0) return bad(...troubles);
  if (steps.every(({ wind, seas }) => wind === null && seas === null)) return bad({ kind: 'forecast empty' });
  if (given.issuedAt === undefined) asks.push({ what: 'issued' });
  if (asks.length > 0 || given.issuedAt === undefined) return good({ asks });
  return good({
    content: {
      source: 'typed',
      issuer: '',
      issuedAt: new Date(given.issuedAt).toISOString(),
      places: [{ place: given.place ?? '', headlines: [], steps }],
      notRead,
      problems: [...problems, ...oddities(steps, heightsNamed)],
    },
  });
}
