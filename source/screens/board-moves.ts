import { boardStops } from './board.ts';
import type { Stop } from './lines.ts';
import { lookedAt, weatherLookedAt } from './looked-at.ts';
import { type Model, type Step, turnedTo } from './model.ts';
import { trouble } from './page-moves.ts';

/** The choice moves `by` stops; from none to the first or the last. */
export function choose(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const stops = boardStops(model);
    const at = stops.findIndex(({ key }) => key === model.chosen);
    const next = at < 0 ? (by > 0 ? 0 : stops.length - 1) : at + by;
    return chosen(model, stops[Math.max(0, Math.min(next, stops.length - 1))]);
  };
}

/** The choice moves to the first stop of the next part of the page, or the one before. */
export function choosePart(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const stops = boardStops(model);
    const parts = [...new Set(stops.map(({ part }) => part))];
    const here = stops.find(({ key }) => key === model.chosen)?.part;
    const at = here === undefined ? (by > 0 ? -1 : parts.length) : parts.indexOf(here);
    const part = parts[Math.max(0, Math.min(parts.length - 1, at + by))];
    return chosen(
      model,
      stops.find((stop) => stop.part === part),
    );
  };
}

export function chooseNothing(model: Model): Step {
  return [{ ...model, chosen: null, unfolded: new Set() }, []];
}

export function chooseLast(model: Model): Step {
  return chosen(model, boardStops(model).at(-1));
}

/** Turns to what is chosen, or opens or closes the fold. */
export function open(model: Model): Step {
  if (model.boat.is === 'loading') return [model, []];
  if (model.boat.is === 'shut') return trouble(model);
  const stop = boardStops(model).find(({ key }) => key === model.chosen);
  const opens = stop?.opens ?? { open: 'answer' };
  if (opens.open === 'item')
    return [turnedTo(lookedAt(model, opens.id), { page: 'item', id: opens.id, from: 0 }), []];
  if (opens.open === 'engine') return [turnedTo(model, { page: 'engine', id: opens.id, from: 0 }), []];
  if (opens.open === 'fold') return [{ ...model, unfolded: toggled(model.unfolded, opens.fold) }, []];
  const seen = opens.open === 'answer' ? weatherLookedAt(model) : model;
  return [turnedTo(seen, { page: opens.open, from: 0 }), []];
}

function chosen(model: Model, stop: Stop | undefined): Step {
  return [{ ...model, chosen: stop?.key ?? null }, []];
}

function toggled(set: ReadonlySet<string>, one: string): ReadonlySet<string> {
  const next = new Set(set);
  if (!next.delete(one)) next.add(one);
  return next;
}
