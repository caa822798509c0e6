import { momentFrom } from '../../words/moments.ts';
import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { dueRows, rowsAsOf } from './due.ts';
import { type RoundPage, savedOf, UNTYPED, withTyped } from './round.ts';
import { standing } from './standing.ts';

/** Opens the round; where nothing can be saved, says so before anything is typed. */
export function walkRound(model: Model): Step {
  const { boat } = model;
  if (boat.is !== 'open') return [model, []];
  if (boat.loaded.readOnly)
    return [{ ...model, notice: 'nothing can be saved here: ! says what stands in the way' }, []];
  if (model.leftRound && isGoneOnWith(model.leftRound, model.now))
    return [{ ...turnedTo(model, { ...model.leftRound, left: null }), leftRound: null }, []];
  const rows = dueRows(boat.loaded, boat.document);
  if (rows.length === 0) return [{ ...model, notice: 'nothing is due a look' }, []];
  const when = { ...UNTYPED, moment: null };
  const before = boat.document?.score.boat ?? null;
  return [turnedTo(model, { page: 'round', from: 0, rows, at: 1, when, saves: [], before, left: null }), []];
}

/** Leaves the round. What it asked for and is not on the disk yet is still answered to it. */
export function leaveRound(model: Model): Step {
  const page = pageOf(model);
  return page.page === 'round'
    ? [{ ...turnedBack(model), leftRound: { ...page, left: model.now } }, []]
    : [model, []];
}

/** So long after it was left the round is gone on with as it was; later it is drawn up afresh. Judgement, no source. */
const GONE_ON_WITH_MS = 10 * 60_000;

function isGoneOnWith({ left, saves }: RoundPage, now: number): boolean {
  return saves.some(({ entries }) => entries === null) || now - (left ?? 0) < GONE_ON_WITH_MS;
}

/** To the next row or the one before: passing one is not looking at it. Never past the ends. */
export function toLook(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    return page.page === 'round' ? [withTop(model, movedBy(model, page, by)), []] : [model, []];
  };
}

/** The page with another row in hand; where what was typed as its moment is none, that is told and stays in hand. */
export function movedBy(model: Model, page: RoundPage, by: 1 | -1): RoundPage {
  const settled = page.at === 0 ? whenSettled(model, page) : page;
  const at = Math.max(0, Math.min(page.rows.length, page.at + by));
  return settled ? { ...settled, at, from: 0 } : misread(page);
}

/** The moment of the round from what was typed, and what had been found last by then; null where it is no moment gone by. */
function whenSettled(model: Model, page: RoundPage): RoundPage | null {
  const { when, rows } = page;
  const text = when.field.text.trim();
  const moment = text === '' ? null : momentFrom(text, model.now, model.zone);
  if ((moment === null && text !== '') || (moment !== null && moment > model.now)) return null;
  if (model.boat.is !== 'open' || moment === when.moment) return page;
  const loaded = standing(page, model.boat.loaded, model.now, null);
  const asOf = rowsAsOf(rows, loaded, moment ?? model.now);
  return {
    ...page,
    when: { ...when, moment },
    rows: rows.map((row, index) => (savedOf(page, row) ? row : asOf[index]!)),
  };
}

function misread(page: RoundPage): RoundPage {
  const { text } = page.when.field;
  const expected = 'a moment gone by, by the clocks here';
  const example = '07:40, yesterday 18:00, 3 h ago';
  const told = [{ kind: 'not understood' as const, field: 'when', text, expected, example }];
  return withTyped(page, { told, insisted: false });
}
