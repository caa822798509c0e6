import type { Draft, Entry } from '../../logbook/entries.ts';
import type { Result, Trouble } from '../../trouble.ts';
import type { VerdictDocument } from '../../words/document.ts';
import { sayShortly } from '../../words/troubles.ts';
import { fieldWith } from '../field.ts';
import type { Loaded, Model, Page, Step } from '../model.ts';
import { type Batch, type RoundPage, rowInHand } from './round.ts';
import { roundRows } from './rows.ts';
import { strikesAsked, withLooks } from './striking.ts';

/** What a round makes of the disk's answer; null where it did not ask for these. */
export function roundSaved(
  model: Model,
  drafts: readonly Draft[],
  result: Result<readonly Entry[]>,
): Step | null {
  const page = model.pages.find((one): one is RoundPage => one.page === 'round');
  if (!page) return null;
  const batch = page.batches.find((one) => one.drafts === drafts);
  const strikes = page.batches.some(({ looks }) => looks.some(({ strike }) => strike === drafts));
  if (!batch && !strikes) return null;
  if (!result.ok) {
    const kept = batch ? typedAgain(page, batch, result.troubles) : stillThere(page, drafts);
    const notice = `NOT SAVED: ${result.troubles.map(sayShortly).join(' ')}`;
    return [{ ...model, pages: inPlace(model.pages, page, kept), notice }, []];
  }
  if (!batch) {
    const without = withLooks(page, (look) => (look.strike === drafts ? null : look));
    return [{ ...model, pages: inPlace(model.pages, page, without) }, [{ do: 'load' }]];
  }
  const [next, requests] = strikesAsked(withIds(page, batch, result.value), model);
  return [{ ...model, pages: inPlace(model.pages, page, next) }, [{ do: 'load' }, ...requests]];
}

/** The pages once the answer is known: what was entered before it has changed the score by so much. */
export function roundJudged(pages: Model['pages'], of: Loaded, document: VerdictDocument): Model['pages'] {
  const page = pages.find((one): one is RoundPage => one.page === 'round');
  if (!page) return pages;
  const known = new Set(of.entries.map(({ id }) => id));
  const isKnown = ({ looks, score }: Batch) =>
    score === null && looks.every(({ ids }) => ids?.every((id) => known.has(id)) ?? false);
  const last = page.batches.findLast(isKnown);
  const before = page.latest?.score.boat ?? document.score.boat;
  const batches = page.batches.map((batch) => {
    if (batch === last) return { ...batch, score: { before, after: document.score.boat } };
    return isKnown(batch) ? { ...batch, score: 'with next' as const } : batch;
  });
  const next = { ...page, batches, began: page.began ?? document, latest: document };
  return inPlace(pages, page, page.began ? next : withPressing(next, document));
}

/** Begun before the first answer: what that finds pressing is due as well. */
function withPressing(page: RoundPage, document: VerdictDocument): RoundPage {
  const rows = roundRows(page.ground, document);
  const hand = rowInHand(page);
  const at = page.at < 0 ? page.at : rows.findIndex(({ look }) => look.id === hand);
  return { ...page, rows, at: at < 0 && page.at >= 0 ? rows.length : at };
}

function withIds(page: RoundPage, batch: Batch, entries: readonly Entry[]): RoundPage {
  let from = 0;
  const looks = batch.looks.map((look) => {
    const ids = entries.slice(from, from + look.drafts.length).map(({ id }) => id);
    from += look.drafts.length;
    return { ...look, ids };
  });
  return { ...page, batches: page.batches.map((one) => (one === batch ? { ...one, looks } : one)) };
}

/** What could not be saved stands in its row again, unless something else was typed there meanwhile. */
function typedAgain(page: RoundPage, batch: Batch, troubles: readonly Trouble[]): RoundPage {
  const lost = batch.looks.filter(({ strike }) => strike === null);
  const fields = { ...page.fields };
  for (const { row, text } of lost) if (!fields[row]?.text) fields[row] = fieldWith(text);
  const failed = Object.fromEntries(lost.map(({ row }) => [row, troubles]));
  return {
    ...page,
    fields,
    failed: { ...page.failed, ...failed },
    batches: page.batches.filter((one) => one !== batch),
  };
}

function stillThere(page: RoundPage, drafts: readonly Draft[]): RoundPage {
  return withLooks(page, (look) => (look.strike === drafts ? { ...look, strike: null } : look));
}

function inPlace([board, ...rest]: Model['pages'], page: Page, next: Page): Model['pages'] {
  return [board, ...rest.map((one) => (one === page ? next : one))];
}
