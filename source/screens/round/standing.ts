import type { Entry } from '../../logbook/entries.ts';
import { instant } from '../../words/figures.ts';
import type { Loaded } from '../model.ts';
import type { RoundPage, Saved } from './round.ts';

/** The boat as she stands with all this round saved, on the disk and read again or not yet, and nothing of what it struck or is to take the place of. */
export function standing(page: RoundPage, loaded: Loaded, now: number, without: Saved | null): Loaded {
  const own = new Set(page.saves.flatMap(({ entries }) => (entries ?? []).map(({ id }) => id)));
  const others = loaded.entries.filter(({ id }) => !own.has(id));
  const last = others.reduce((most, { lc }) => Math.max(most, lc), 0);
  const rec = instant(now);
  const drafts = page.saves.filter((one) => !one.struck && one !== without).flatMap((one) => one.drafts);
  const mine = drafts.map(
    (draft, index): Entry => ({
      ...draft,
      id: `round-${index}`,
      writer: '',
      n: index,
      lc: last + 1 + index,
      rec,
    }),
  );
  return { ...loaded, entries: [...others, ...mine] };
}
