import type { Draft, Entry } from '../../logbook/entries.ts';
import type { Result, Trouble } from '../../trouble.ts';
import type { VerdictDocument } from '../../words/document.ts';
import { sayNotSaved } from '../../words/troubles.ts';
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
  const page = askedBy(model, drafts);
  if (!page) return null;
  const batch = page.batches.find((one) => one.drafts === drafts);
  if (!result.ok) {
    const kept = batch ? typedAgain(page, batch, result.troubles) : stillThere(page, drafts);
    return [{ ...walkedAgain(model, page, kept), notice: sayNotSaved(result.troubles) }, []];
  }
  if (!batch) {
    const without = withLooks(page, (look) => (look.strike === drafts ? null : look));
    return [answered(model, page, without), [{ do: 'load' }]];
  }
  const [next, requests] = strikesAsked(withIds(page, batch, result.value), model);
  return [answered(model, page, next), [{ do: 'load' }, ...requests]];
}

/** The round that asked for these, walked still or left meanwhile. */
function askedBy({ pages, leftRound }: Model, drafts: readonly Draft[]): RoundPage | null {
  const asked = ({ batches }: RoundPage) =>
    batches.some((batch) => batch.drafts === drafts || batch.looks.some(({ strike }) => strike === drafts));
  const rounds = [...pages.filter((one): one is RoundPage => one.page === 'round'), leftRound];
  return rounds.find((one) => one !== null && asked(one)) ?? null;
}

function answered(model: Model, page: RoundPage, next: RoundPage): Model {
  if (model.leftRound === page) return { ...model, leftRound: next };
  return { ...model, pages: inPlace(model.pages, page, next) };
}

/** A round that was left comes back above the board with what could not be saved; where another is walked, it waits. */
function walkedAgain(model: Model, page: RoundPage, kept: RoundPage): Model {
  const [board, ...rest] = model.pages;
  const another = rest.some((one) => one.page === 'round');
  if (model.leftRound !== page || another) return answered(model, page, kept);
  const { failed, rows } = kept;
  const at = rows.findIndex(({ look }) => failed[look.id]);
  const back = { ...kept, at: at < 0 ? kept.at : at, leaving: false };
  return { ...model, leftRound: null, pages: [board, back, ...rest] };
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
