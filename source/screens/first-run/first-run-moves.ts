import { answered } from '../../words/answered.ts';
import { EMPTY, fieldWith } from '../field.ts';
import { type Model, pageOf, type Step, withTop } from '../model.ts';
import { type FirstRunPage, FOLDER, firstWrong, folderOf, rowAt, rowsOf } from './first-run.ts';

/** Takes what was typed, and goes to the next row; on the last, makes her folder. What is not understood is told, and stays to be put right. */
export function takeAnswer(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'first run' || page.making) return [model, []];
  if (rowAt(page).is === 'make') return make(model, page);
  const taken = withAnswer(model, page);
  return [withTop(model, taken.told.length > 0 ? taken : toRow(taken, taken.at + 1)), []];
}

/** To another row. What was typed is taken; an answer that is not understood keeps the row. */
export function toQuestion(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'first run' || page.making) return [model, []];
    const taken = rowAt(page).is === 'make' ? page : withAnswer(model, page);
    return [withTop(model, isRefused(taken) ? taken : toRow(taken, taken.at + by)), []];
  };
}

/** Looks round the sample boat first. */
export function openSample(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'first run' || page.making) return [model, []];
  return [withTop(model, { ...page, making: 'sample' }), [{ do: 'open sample' }]];
}

/** Leaves at the second time, since what was typed goes with it. */
export function leaveUnmade(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'first run' || page.making) return [model, []];
  if (page.leaving) return [model, [{ do: 'quit' }]];
  return [
    { ...withTop(model, { ...page, leaving: true }), notice: 'Esc again leaves; nothing is written' },
    [],
  ];
}

/** Nothing typed where something must be is no answer yet, and nothing wrong: one can go on and come back. */
function isRefused({ told, field }: FirstRunPage): boolean {
  return told.length > 0 && field.text.trim() !== '';
}

function withAnswer(model: Model, page: FirstRunPage): FirstRunPage {
  const { field } = rowAt(page);
  const { [field]: before, ...others } = page.answers;
  const text = page.field.text.trim();
  if ((before ?? '') === text && !Object.hasOwn(page.so.troubles, field))
    return { ...page, told: [], leaving: false };
  const answers = text === '' ? others : { ...others, [field]: text };
  const so = field === FOLDER ? page.so : answered(answers, model);
  const told = so.troubles[field] ?? [];
  return { ...page, answers, so, told, leaving: false };
}

function toRow(page: FirstRunPage, to: number): FirstRunPage {
  const rows = rowsOf(page);
  const at = Math.max(0, Math.min(rows.length - 1, to));
  const text = page.answers[rows[at]!.field] ?? '';
  return { ...page, at, field: text === '' ? EMPTY : fieldWith(text), told: [] };
}

function make(model: Model, page: FirstRunPage): Step {
  const wrong = firstWrong(page);
  if (wrong !== null) {
    const there = toRow(page, wrong);
    return [withTop(model, { ...there, told: page.so.troubles[rowAt(there).field] ?? [] }), []];
  }
  const { boat } = page.so;
  return [
    withTop(model, { ...page, told: [], making: boat }),
    [{ do: 'begin', boat, folder: folderOf(page) }],
  ];
}
