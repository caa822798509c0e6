import type { Content } from '../forecast/content.ts';
import type { Result } from '../trouble.ts';
import { EMPTY } from './field.ts';
import { type HeardPage, heardOn, rowsFor } from './heard.ts';
import { heardLines } from './heard-page.ts';
import { CANNOT_SAVE } from './looking-only.ts';
import { type Model, type Page, pageOf, type Step, turnedTo, withTop } from './model.ts';
import { sightOf } from './sight.ts';
import { mostFrom, pageRows } from './turned.ts';

/** Opens the page to type a forecast on; where nothing can be saved, says why instead. */
export function hear(model: Model): Step {
  if (model.boat.is !== 'open') return [model, []];
  if (model.boat.loaded.readOnly) return [{ ...model, notice: CANNOT_SAVE }, []];
  const fields = Array.from({ length: 1 + rowsFor([]) }, () => EMPTY);
  const page: HeardPage = {
    page: 'heard',
    from: 0,
    since: model.now,
    fields,
    at: 0,
    ready: false,
    told: [],
    saving: null,
  };
  return [turnedTo(model, page), []];
}

/** To the next line or the one before; kept in sight. */
export function toHeardRow(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'heard') return [model, []];
    return [inSight(model, { ...page, at: (page.at + by + page.fields.length) % page.fields.length }), []];
  };
}

/** Goes on to the next line; on an empty one after all is typed, asks once more, then takes it in. */
export function enterHeard(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'heard' || page.saving) return [model, []];
  const typed = page.fields.slice(1).some(({ text }) => text.trim() !== '');
  const empty = page.fields[page.at]!.text.trim() === '';
  if (!(empty && typed)) {
    const last = page.at === page.fields.length - 1;
    return last ? ended(model, page) : toHeardRow(1)(model);
  }
  return ended(model, page);
}

function ended(model: Model, page: HeardPage): Step {
  const { content, rows, issuedAt } = heardOn(page, model.zone);
  const wrong = rows.findIndex(({ troubles }) => troubles.length > 0);
  if (wrong >= 0) return [inSight(model, { ...page, at: wrong + 1 }), []];
  if (issuedAt === null) {
    const asked = inSight(model, { ...page, at: 0 });
    return [{ ...asked, notice: 'when was it issued?' }, []];
  }
  if (content === null) return [{ ...model, notice: 'nothing is heard of wind or seas yet' }, []];
  if (!page.ready) return [inSight(model, { ...page, ready: true }), []];
  const text = page.fields.map((field) => field.text.trim()).join('\n');
  return [withTop(model, { ...page, saving: content }), [{ do: 'take in', content, text, now: page.since }]];
}

/** The page that asked for it closes once it is on the disk; else it stays as it was typed, with what stood in the way. */
export function takenIn(model: Model, content: Content, result: Result<string>): Step {
  const [board, ...rest] = model.pages;
  const isOf = (page: Page) => page.page === 'heard' && page.saving === content;
  if (!result.ok) {
    const told = rest.map((page) =>
      page.page === 'heard' && isOf(page)
        ? { ...page, saving: null, ready: false, told: result.troubles }
        : page,
    );
    return [{ ...model, pages: [board, ...told] }, []];
  }
  const pages: Model['pages'] = [board, ...rest.filter((page) => !isOf(page))];
  return [{ ...model, pages, notice: 'the forecast is taken in' }, [{ do: 'load' }]];
}

function inSight(model: Model, page: HeardPage): Model {
  const sight = sightOf(model);
  const moved = withTop(model, page);
  if (!sight) return moved;
  const lines = heardLines(sight, page, model.size.columns);
  const row = lines.findIndex(({ spans }) => spans[0]?.text.startsWith('  > '));
  const from = Math.max(0, Math.min(mostFrom(moved), row - Math.floor(pageRows(model.size) / 2)));
  return withTop(model, { ...page, from });
}
