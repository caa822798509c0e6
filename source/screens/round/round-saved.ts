import type { Draft, Entry } from '../../logbook/entries.ts';
import type { Result } from '../../trouble.ts';
import { instant } from '../../words/figures.ts';
import { sayShortly } from '../../words/troubles.ts';
import { fieldWith } from '../field.ts';
import type { Model, Page, Step } from '../model.ts';
import type { RoundPage, Saved } from './round.ts';

/** The model after the disk answered; null where no round asked for these drafts. */
export function roundSaved(
  model: Model,
  drafts: readonly Draft[],
  result: Result<readonly Entry[]>,
): Step | null {
  const page = roundIn(model);
  if (!page) return null;
  if (page.saves.some(({ asked }) => asked === drafts)) {
    return result.ok
      ? andReadAgain(strikesAsked(model, onTheDisk(page, drafts, result.value)))
      : [{ ...reopened(model, kept(page, drafts, result.troubles)), notice: noticeOf(result.troubles) }, []];
  }
  if (!page.saves.some(({ strikes }) => strikes === drafts)) return null;
  if (result.ok) return [model, [{ do: 'load' }]];
  const saves = page.saves.map((one) =>
    one.strikes === drafts ? { ...one, struck: false, strikes: null } : one,
  );
  return [{ ...withRound(model, { ...page, saves }), notice: noticeOf(result.troubles) }, []];
}

/** Asks for the strikes of all that is to be struck and is on the disk by now. */
export function strikesAsked(model: Model, page: RoundPage): Step {
  const due = page.saves.filter((one) => one.struck && one.entries !== null && one.strikes === null);
  if (due.length === 0) return [withRound(model, page), []];
  const at = instant(Math.floor(model.now / 1000) * 1000);
  const by = model.by === null ? {} : { by: model.by };
  const drafts = due.flatMap(({ entries }) =>
    entries!.map(
      ({ id }): Draft => ({ kind: 'strike', at, ...by, entry: id, why: 'taken back in the round' }),
    ),
  );
  const saves = page.saves.map((one) => (due.includes(one) ? { ...one, strikes: drafts } : one));
  return [withRound(model, { ...page, saves }), [{ do: 'save', drafts }]];
}

function onTheDisk(page: RoundPage, drafts: readonly Draft[], entries: readonly Entry[]): RoundPage {
  let taken = 0;
  const saves = page.saves.map((one): Saved => {
    if (one.asked !== drafts) return one;
    taken += one.drafts.length;
    return { ...one, entries: entries.slice(taken - one.drafts.length, taken) };
  });
  return { ...page, saves };
}

/** What could not be saved is typed again, with what stood in the way; the row in hand goes back to it unless it is being typed in. */
function kept(page: RoundPage, drafts: readonly Draft[], told: RoundPage['when']['told']): RoundPage {
  const failed = page.saves.filter(({ asked }) => asked === drafts);
  const typed = new Map(failed.map((one) => [one.row, one]));
  const rows = page.rows.map((row) => {
    const one = typed.get(row.look.id);
    if (!one) return row;
    return row.field.text === ''
      ? { ...row, field: fieldWith(one.typed), told, insisted: false }
      : { ...row, told };
  });
  const idle = (page.at === 0 ? page.when : page.rows[page.at - 1]!).field.text === '';
  const first = 1 + page.rows.findIndex(({ look }) => typed.has(look.id));
  return {
    ...page,
    rows,
    saves: page.saves.filter((one) => !failed.includes(one)),
    ...(idle ? { at: first, from: 0 } : {}),
  };
}

function noticeOf(troubles: RoundPage['when']['told']): string {
  return troubles.map(sayShortly)[0] ?? 'NOT SAVED';
}

function andReadAgain([model, requests]: Step): Step {
  return [model, [...requests, { do: 'load' }]];
}

/** The round that is walked, or else the one left last. */
function roundIn({ pages, leftRound }: Model): RoundPage | null {
  return pages.find((page): page is RoundPage => page.page === 'round') ?? leftRound;
}

/** The round on the board again where it was left: something of it could not be saved. */
function reopened(model: Model, round: RoundPage): Model {
  const [board, ...rest] = model.pages;
  if (rest.some(({ page }) => page === 'round')) return withRound(model, round);
  return { ...model, leftRound: null, pages: [board, { ...round, left: null }, ...rest] };
}

/** The model with the round changed, wherever it lies. */
function withRound(model: Model, round: RoundPage): Model {
  const [board, ...rest] = model.pages;
  if (!rest.some(({ page }) => page === 'round')) return { ...model, leftRound: round };
  return { ...model, pages: [board, ...rest.map((page): Page => (page.page === 'round' ? round : page))] };
}
