import { FRESH, type Model } from './model.ts';

/** What was turned to is no longer new. */
export function lookedAt(model: Model, id: string): Model {
  if (!model.fresh.has(id)) return model;
  return { ...model, fresh: new Set([...model.fresh].filter((one) => one !== id)) };
}

/** The answer in full, and the weather, tell of the forecast's age and of staying. */
export function weatherLookedAt(model: Model): Model {
  return lookedAt(lookedAt(model, FRESH.forecast), FRESH.staying);
}
