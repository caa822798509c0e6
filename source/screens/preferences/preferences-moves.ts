import { type Kept, preferenceFrom } from '../../words/preference-fields.ts';
import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { preferencesAt, rowAt } from './preferences.ts';

export function preferences(model: Model): Step {
  return [turnedTo(model, preferencesAt(keptIn(model), 0)), []];
}

/** Another choice, saved at once. */
export function choosePreference(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'preferences') return [model, []];
    const { field, choices } = rowAt(page);
    if (!choices) return [model, []];
    const now = choices.indexOf(String(keptIn(model)[field]));
    return kept(model, { [field]: choices[(now + by + choices.length) % choices.length] });
  };
}

/** To another row; a text is saved on the way, and one that is not understood keeps the row. */
export function toPreference(by: 1 | -1): (model: Model) => Step {
  return leavingRow((model, at) => withTop(model, preferencesAt(keptIn(model), at + by)));
}

/** Saves the text that was typed; a choice goes to the next one. */
export function takePreference(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'preferences') return [model, []];
  return rowAt(page).choices ? choosePreference(1)(model) : toPreference(1)(model);
}

export const leavePreferences = leavingRow(turnedBack);

function leavingRow(go: (model: Model, at: number) => Model): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'preferences') return [model, []];
    const row = rowAt(page);
    const text = page.field.text.trim();
    if (row.choices || text === (keptIn(model)[row.field] ?? '')) return [go(model, page.at), []];
    const read = preferenceFrom(row, text);
    if (!read.ok) return [withTop(model, { ...page, told: read.troubles }), []];
    const [next, requests] = kept(model, read.value);
    return [go(next, page.at), requests];
  };
}

/** What is preferred changes what every page says, so all of it is worded anew. */
function kept(model: Model, change: Partial<Kept>): Step {
  const all = { ...keptIn(model), ...change };
  const { palette, name, backup, zone } = all;
  const next: Model = {
    ...model,
    kept: all,
    palette: model.colour ? palette : 'plain',
    by: name,
    zone: zone ?? model.machineZone,
    copy: 'backup' in change ? (backup === null ? null : { at: null }) : model.copy,
    notice: 'saved in your preferences',
  };
  return [next, [{ do: 'keep preferences', change }, { do: 'load' }]];
}

/** The palette can be changed by a key of its own. */
function keptIn({ kept: held, colour, palette }: Model): Kept {
  return colour ? { ...held, palette } : held;
}
