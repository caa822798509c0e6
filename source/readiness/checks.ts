import type { Check } from '../boat/check.ts';
import type { CheckRecord } from '../condition/condition.ts';

/** The answer that still stands: work on what it looks at voids it, and an arrival voids a look before leaving (model 5, 7). */
export function standingAnswer(check: Check, record: CheckRecord): CheckRecord['answers'][number] | null {
  const voided = record.unsettledBy !== null || (check.when === 'leaving' && !record.madeSinceArrival);
  return voided ? null : (record.answers.at(-1) ?? null);
}
