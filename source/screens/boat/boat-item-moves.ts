import type { Field } from '../field.ts';
import { type Model, pageOf, type Step, turnedBack, withTop } from '../model.ts';
import { withLegBefore, withRoomForLeg } from './legs.ts';
import { type BoatItemPage, KIND_NAMES } from './part.ts';
import { typedPart } from './typed-part.ts';

/** The page after something was typed in the row in hand: checked at once, and with room for a further leg. */
export function withTyped(page: BoatItemPage, field: Field): BoatItemPage {
  return checked({ ...page, fields: page.fields.with(page.at, field), typed: true });
}

export const toBoatField = (by: 1 | -1) =>
  withItem((model, page) => {
    const rows = page.fields.length;
    return [withTop(model, { ...page, at: (page.at + by + rows) % rows }), []];
  });

/** An empty leg before the one in hand. */
export const insertLeg = withItem((model, page) => [withTop(model, checked(withLegBefore(page))), []]);

/** Writes what was changed into the boat file; or goes to what cannot stand there. */
export const saveItem = withItem((model, page) => {
  if (model.boat.is === 'shut') return [withTop(model, { ...page, told: model.boat.troubles }), []];
  const now = page.how === 'add' && model.boat.is === 'open' ? model.boat.loaded.boat : page.of;
  const { change, wrong } = typedPart({ ...page, of: now }, page.over);
  const [first] = wrong;
  if (first) return [withTop(model, { ...page, at: first.at ?? page.at, wrong, asked: true, told: [] }), []];
  if (change.set.length === 0) return [turnedBack(model), []];
  const name = page.fields[page.rows.findIndex(({ path }) => path[0] === 'name')]?.text.trim();
  const what = `saved in boat.json: ${name ?? KIND_NAMES[page.kind][0]}`;
  return [
    withTop(model, { ...page, wrong, told: [], saving: true, leaving: false }),
    [{ do: 'change boat', change, what }],
  ];
});

/** Back; at the second time where something was typed, since it goes. */
export const leaveItem = withItem((model, page) => {
  if (!page.typed || page.leaving) return [turnedBack(model), []];
  const notice = 'Esc again goes back, nothing saved';
  return [{ ...withTop(model, { ...page, leaving: true }), notice }, []];
});

function checked(page: BoatItemPage): BoatItemPage {
  const roomy = withRoomForLeg(page);
  return { ...roomy, wrong: typedPart(roomy, roomy.over).wrong, told: [], leaving: false };
}

function withItem(move: (model: Model, page: BoatItemPage) => Step): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    return page.page !== 'boat item' || page.saving ? [model, []] : move(model, page);
  };
}
