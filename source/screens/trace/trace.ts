import { believe } from '../../inference/believe.ts';
import type { Draft } from '../../logbook/entries.ts';
import type { Table } from '../../tracing/table.ts';
import { tablesFor, tablesWith } from '../../tracing/tables.ts';
import { cleaned } from '../../words/cleaned.ts';
import type { TraceDocument } from '../../words/trace-document.ts';
import { thingsOf, traced } from '../../words/traced.ts';
import type { Loaded } from '../model.ts';

/** Where a loss or a fault of an item comes from, hunted look by look. */
export interface TracePage {
  readonly page: 'trace';
  readonly from: number;
  /** The item's id. */
  readonly id: string;
  /** The table it is traced by. */
  readonly table: string;
  /** An answer, or the strike of one, that the page does not reckon with yet; null where it reckons with all. */
  readonly asked: Asked | null;
}

interface Asked {
  readonly drafts: readonly Draft[];
  /** The ids in the log; null while it is on its way there. */
  readonly ids: readonly string[] | null;
}

/** The tables an item can be traced by; none where nothing fits it. */
export function traceTables({ boat, own }: Loaded, id: string): readonly Table[] {
  const thing = thingsOf(boat).find((one) => one.id === id);
  return thing ? tablesFor(thing, tablesWith(own.tables)) : [];
}

/** The trace as the log stands; null where the boat no longer has the item, or the table. */
export function traceIn(
  loaded: Loaded,
  { id, table }: Pick<TracePage, 'id' | 'table'>,
): TraceDocument | null {
  const known = reckoned.get(loaded) ?? new Map<string, TraceDocument | null>();
  reckoned.set(loaded, known);
  const key = `${id} ${table}`;
  if (!known.has(key)) known.set(key, reckon(loaded, id, table));
  return known.get(key) ?? null;
}

/** Reckoned once a reading of the folder: the page is drawn at every key. */
const reckoned = new WeakMap<Loaded, Map<string, TraceDocument | null>>();

function reckon(loaded: Loaded, id: string, wanted: string): TraceDocument | null {
  const { boat, condition, own } = loaded;
  const thing = thingsOf(boat).find((one) => one.id === id);
  const table = traceTables(loaded, id).find((one) => one.id === wanted);
  if (!thing || !table) return null;
  const given = { boat, condition, beliefs: believe(boat, condition) };
  return cleaned(traced(given, { thing, table, flooding: null, troubles: own.troubles }));
}
