import { readBoat } from '../../source/boat/read.ts';
import type { Trouble } from '../../source/trouble.ts';
import { sandpiper } from './a-boat.ts';

/** A boat file as loose fields, to be broken. */
// biome-ignore lint/suspicious/noExplicitAny: breaking a file is what types are there to prevent
export type Loose = any;

/** The text of a sound boat file, one field a line, after `change`. */
export function boatText(change: (boat: Loose) => void = () => {}): string {
  const boat: Loose = structuredClone(sandpiper);
  change(boat);
  return JSON.stringify(boat, null, 2);
}

export function troublesIn(text: string): readonly Trouble[] {
  const read = readBoat(text, 'boat.json');
  return read.ok ? [] : read.troubles;
}

/** A trouble in short: its kind, and where it lies. */
export function inShort(trouble: Trouble): string {
  if (!('place' in trouble)) return trouble.kind;
  const { path, line } = trouble.place;
  return `${trouble.kind}${trouble.kind === 'not json' ? ` (${trouble.what})` : ''}: ${path ?? `line ${line}`}`;
}
