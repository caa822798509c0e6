import { cleaned } from '../words/cleaned.ts';
import type { VerdictDocument } from '../words/document.ts';
import type { BoatShown, Model } from './model.ts';
import { type ShownItem, shownItems } from './shown-item.ts';

/** What every panel looks at: the model with its boat open. */
export interface Sight {
  readonly model: Model;
  readonly boat: BoatShown & { is: 'open' };
  /** Null until the first reckoning is done: chances then read `working`. */
  readonly document: VerdictDocument | null;
  readonly items: readonly ShownItem[];
  /** The moment the page speaks of, ms since 1970 UTC. */
  readonly at: number;
}

/** Null while there is no boat to look at. */
export function sightOf(model: Model): Sight | null {
  if (model.boat.is !== 'open') return null;
  const { document } = model.boat;
  const at = document ? Date.parse(document.at) : model.now;
  return { model, boat: model.boat, document, items: shownItems(model.boat), at };
}

/** The name of an item or engine. */
export function nameOf({ items, boat }: Sight, id: string): string {
  const engine = boat.loaded.boat.engines.find((one) => one.id === id);
  return items.find((item) => item.id === id)?.name ?? (engine ? cleaned(engine.name) : id);
}

export function itemsOfKind<K extends ShownItem['kind']>(
  { items }: Sight,
  kind: K,
): readonly Extract<ShownItem, { kind: K }>[] {
  return items.filter((item): item is Extract<ShownItem, { kind: K }> => item.kind === kind);
}
