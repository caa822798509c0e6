import { instant } from '../../words/figures.ts';
import type { Request } from '../model.ts';
import type { Entered, RoundPage } from './round.ts';
import type { Typist } from './typed-row.ts';

/** The page with what was entered there marked to be struck, as soon as its ids are known. */
export function struckWhere(page: RoundPage, which: (look: Entered) => boolean): RoundPage {
  return withLooks(page, (look) =>
    look.strike === null && which(look) ? { ...look, strike: 'wanted' } : look,
  );
}

/** Asks for the strikes that can be made: of entries that are in the log. */
export function strikesAsked(page: RoundPage, { now, by }: Omit<Typist, 'zone'>): [RoundPage, Request[]] {
  const ids = page.batches.flatMap(({ looks }) =>
    looks.flatMap((look) => (isReady(look) ? (look.ids ?? []) : [])),
  );
  if (ids.length === 0) return [page, []];
  const at = instant(Math.floor(now / 1000) * 1000);
  const drafts = ids.map((entry) => ({
    kind: 'strike' as const,
    at,
    ...(by === null ? {} : { by }),
    entry,
  }));
  const asked = withLooks(page, (look) => (isReady(look) ? { ...look, strike: drafts } : look));
  return [asked, [{ do: 'save', drafts }]];
}

function isReady({ strike, ids }: Entered): boolean {
  return strike === 'wanted' && ids !== null;
}

/** The page with each look as the function makes it, without those it makes null and the batches left empty. */
export function withLooks(page: RoundPage, made: (look: Entered) => Entered | null): RoundPage {
  const batches = page.batches
    .map((batch) => ({ ...batch, looks: batch.looks.flatMap((look) => made(look) ?? []) }))
    .filter(({ looks }) => looks.length > 0);
  return { ...page, batches };
}
