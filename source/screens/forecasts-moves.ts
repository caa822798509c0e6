import type { Draft } from '../logbook/entries.ts';
import { instant } from '../words/figures.ts';
import { forecastsLines } from './forecasts-page.ts';
import { CANNOT_SAVE } from './looking-only.ts';
import { type Model, pageOf, type Step, turnedTo, withTop } from './model.ts';
import { sightOf } from './sight.ts';
import { mostFrom, pageRows } from './turned.ts';

/** Turns to the forecasts aboard, pointing at the one that counts. */
export function forecasts(model: Model): Step {
  if (model.boat.is !== 'open' || model.boat.document === null) return [model, []];
  const at = Math.max(
    0,
    model.boat.document.forecasts.findIndex(({ counts }) => counts),
  );
  return [turnedTo(model, { page: 'forecasts', from: 0, at }), []];
}

/** Points at the forecast after or before, and keeps it in sight. */
export function pointForecast(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const sight = sightOf(model);
    if (page.page !== 'forecasts' || !sight) return [model, []];
    const count = sight.document?.forecasts.length ?? 0;
    const at = Math.max(0, Math.min(count - 1, page.at + by));
    const lines = forecastsLines(sight, { ...page, at }, model.size.columns);
    const row = lines.findIndex(({ stop }) => stop?.key === String(at));
    const from = Math.max(0, Math.min(mostFrom(model), row - Math.floor(pageRows(model.size) / 2)));
    return [withTop(model, { ...page, at, from }), []];
  };
}

/** Enters in the log that the forecast pointed at counts. */
export function countForecast(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'forecasts' || model.boat.is !== 'open') return [model, []];
  const { document, loaded } = model.boat;
  const one = document?.forecasts[page.at];
  if (!one) return [model, []];
  if (loaded.readOnly) return [{ ...model, notice: CANNOT_SAVE }, []];
  if (one.counts) return [{ ...model, notice: 'it counts already' }, []];
  const draft: Draft = {
    kind: 'forecast',
    at: instant(Math.floor(model.now / 1000) * 1000),
    counts: page.at === 0 ? 'newest' : one.name,
    ...(model.by === null ? {} : { by: model.by }),
  };
  return [{ ...model, notice: 'saving' }, [{ do: 'save', drafts: [draft] }]];
}
