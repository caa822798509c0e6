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
  const all = [
    ...entries.map((entry, order) => ({ entry, struck: false, order })),
    ...struck.map((entry, order) => ({ entry, struck: true, order })),
  ].map((one) => ({ ...one, happened: Date.parse(one.entry.at) }));
  return all
    .sort((a, b) => b.happened - a.happened || b.entry.lc - a.entry.lc || b.order - a.order)
    .map(({ entry, struck: withdrawn }) => ({ entry, struck: withdrawn }));
}
