import type { Entry } from './entries.ts';

/** An entry as it is listed: withdrawn ones stay, marked. */
export interface Listed {
  readonly entry: Entry;
  readonly struck: boolean;
}

/** All entries, withdrawn or not, by when they happened, the newest first; of one instant the latest by cause. */
export function newestFirst({
  entries,
  struck,
}: {
  readonly entries: readonly Entry[];
  readonly struck: readonly Entry[];
}): Listed[] {
  const placed = (all: readonly Entry[], withdrawn: boolean) =>
    all.map((entry, order) => ({ entry, struck: withdrawn, order, happened: Date.parse(entry.at) }));
  return [...placed(entries, false), ...placed(struck, true)].sort(
    (a, b) => b.happened - a.happened || b.entry.lc - a.entry.lc || b.order - a.order,
  );
}
