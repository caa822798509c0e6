import { weatherLookedAt } from './looked-at.ts';
import { type Model, type Page, pageOf, type Step, turnedTo, withTop } from './model.ts';
import { isTrial, stepped, TRIAL_FIELDS, triedWords } from './trial.ts';

export function weather(model: Model): Step {
  if (model.boat.is !== 'open') return [model, []];
  return [turnedTo(weatherLookedAt(model), NEW_WEATHER), []];
}

const NEW_WEATHER: Page = {
  page: 'weather',
  from: 0,
  hour: 0,
  field: 'wind',
  trial: {},
  tried: null,
  trying: false,
};

/** Points at a later or an earlier departure, never past those looked at. */
export function pointHour(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'weather' || model.boat.is !== 'open') return [model, []];
    const document = page.tried ?? model.boat.document;
    const last = (document?.curve.length ?? 1) - 1;
    const hour = Math.max(0, Math.min(last, page.hour + by));
    return [withTop(model, { ...page, hour }), []];
  };
}

/** From one thing that can be tried to the next, round and round. */
export function chooseField(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const { boat } = model;
    if (page.page !== 'weather' || boat.is !== 'open' || boat.document === null) return [model, []];
    const at = TRIAL_FIELDS.indexOf(page.field) + by + TRIAL_FIELDS.length;
    const field = TRIAL_FIELDS[at % TRIAL_FIELDS.length]!;
    const words = triedWords(page.trial, field, { loaded: boat.loaded, document: boat.document });
    return [{ ...withTop(model, { ...page, field }), notice: `${words}: + and - try another` }, []];
  };
}

/** Tries the thing chosen a step higher or lower: the boat file is left as it is. */
export function tryStep(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const { boat } = model;
    if (page.page !== 'weather' || boat.is !== 'open' || boat.document === null) return [model, []];
    if (boat.document.forecast === null) return [{ ...model, notice: 'no forecast, so nothing to try' }, []];
    const ground = { loaded: boat.loaded, document: boat.document };
    const trial = stepped(page.trial, page.field, by, ground);
    if (!isTrial(trial)) return tryNothing(model);
    return [withTop(model, { ...page, trial, trying: true }), [{ do: 'try', loaded: boat.loaded, trial }]];
  };
}

/** Back to what the boat file says. */
export function tryNothing(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'weather') return [model, []];
  return [withTop(model, { ...page, trial: {}, tried: null, trying: false }), []];
}
