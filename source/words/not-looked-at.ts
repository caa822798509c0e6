import type { VerdictDocument } from './document.ts';
import { counted } from './say.ts';

type Looked = Pick<VerdictDocument, 'items'>;

/**
 * The vital things one looks at that nobody has looked at, or not for too long: the score takes them for good, since nothing is known against them. What was
 * never entered, and the looks of every departure, have lists of their own.
 */
export function notLookedAt(document: Looked): number {
  return looks(document).filter(({ state }) => state === 'unseen').length;
}

/** Whether not one vital thing was ever looked at: then a score would say nothing of this boat. */
export function nothingLookedAt(document: Looked): boolean {
  const all = looks(document);
  return all.length > 0 && all.every(({ state, lookedAt }) => state === 'unseen' && lookedAt === null);
}

/** `3 vital things not looked at are taken for good`; empty where there are none. */
export function takenForGood(document: Looked): string {
  const count = notLookedAt(document);
  if (count === 0) return '';
  return `${counted(count, 'vital thing', 'vital things')} not looked at ${count === 1 ? 'is' : 'are'} taken for good`;
}

function looks({ items }: Looked) {
  return items.filter(
    (item) =>
      item.consequence === 'vital' &&
      (item.kind === 'fluid' || item.kind === 'anode' || (item.kind === 'check' && item.when !== 'leaving')),
  );
}
