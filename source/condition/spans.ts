import type { Boat } from '../boat/boat.ts';
import type { EntryOf } from '../logbook/entries.ts';
import type { Condition } from './condition.ts';
import { merged, type Past, type Timed } from './past.ts';

type Whereabouts = Pick<Condition, 'underWay' | 'anchorage' | 'arrivedAt' | 'spans'>;

/** Where she is and when she was under way, from `left` and `arrived`. A second `left` on the way, or an `arrived` while lying, opens or closes no span. */
export function whereaboutsOf(boat: Boat, past: Past): Whereabouts {
  const spans: { from: number; to: number | null }[] = [];
  const comings = merged<Timed<'left'> | Timed<'arrived'>>([past.of('left'), past.of('arrived')]);
  for (const { at, entry } of comings) {
    const open = spans.at(-1)?.to === null;
    if (entry.kind === 'left' && !open) spans.push({ from: at, to: null });
    if (entry.kind === 'arrived' && open) spans.at(-1)!.to = at;
  }
  const now = spans.at(-1);
  if (now?.to === null) return { spans, underWay: { since: now.from }, anchorage: null, arrivedAt: null };
  const arrival = past.of('arrived').at(-1);
  return {
    spans,
    underWay: null,
    anchorage: anchorageOf(boat, arrival?.entry ?? null),
    arrivedAt: arrival?.at ?? null,
  };
}

/** Where an arrival came to lie; before the first, where the boat file says she lies. */
export function anchorageOf(boat: Boat, arrival: EntryOf<'arrived'> | null): string | null {
  if (arrival === null) return boat.anchorage ?? null;
  const named = arrival.anchorage;
  return boat.anchorages.some(({ id }) => id === named) ? named! : null;
}
