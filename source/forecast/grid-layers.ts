import { durationFrom, instantFrom } from './iso-time.ts';

/** A value and the time it holds, ms since 1970 UTC. */
export interface Held<T> {
  readonly from: number;
  readonly to: number;
  readonly value: T;
}

/** `2026-02-03T06:00:00+00:00/PT3H`: when it begins and ends. Null for anything else. */
export function intervalFrom(text: string): { readonly from: number; readonly to: number } | null {
  const [start = '', length = '', ...more] = text.split('/');
  const from = instantFrom(start, null);
  const lasts = durationFrom(length);
  return from === null || lasts === null || more.length > 0 ? null : { from, to: from + lasts };
}

/** The edges at which any of several layers changes, in order, each once. */
export function edgesOf(layers: readonly (readonly Held<unknown>[])[]): readonly number[] {
  const edges = new Set(layers.flatMap((layer) => layer.flatMap(({ from, to }) => [from, to])));
  return [...edges].toSorted((a, b) => a - b);
}

/** What a layer holds at an instant; null where it holds nothing. Layers are in order. */
export function valueAt<T>(layer: readonly Held<T>[], instant: number): T | null {
  let low = 0;
  let high = layer.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (layer[middle]!.to <= instant) low = middle + 1;
    else high = middle;
  }
  const held = layer[low];
  return held && held.from <= instant ? held.value : null;
}
