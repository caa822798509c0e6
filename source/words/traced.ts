import { type Boat, itemsOf } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import { conditionAt } from '../condition/condition-at.ts';
import type { Beliefs } from '../inference/belief.ts';
import { believing } from '../inference/believe.ts';
import type { Turns } from '../maths/turns.ts';
import type { LoadedBoat, OwnTables } from '../outside.ts';
import { closedHunt, foundBefore } from '../tracing/closed-hunts.ts';
import { liveWith } from '../tracing/live-with.ts';
import { pumpRate } from '../tracing/pump.ts';
import type { Table } from '../tracing/table.ts';
import { type Traced, tablesFor, tablesWith } from '../tracing/tables.ts';
import { traceOf } from '../tracing/trace.ts';
import { instant } from './figures.ts';
import {
  type ClosedHuntDocument,
  closedHuntDocument,
  type FoundDocument,
  foundDocument,
} from './found-document.ts';
import { type Flooding, type TraceDocument, traceDocument } from './trace-document.ts';
import { sayTrouble } from './troubles.ts';

/** What is asked of a thing aboard: its trace by a table, what was found before, one closed hunt in full by when its work was done. */
export interface TraceAsked {
  readonly id: string;
  readonly table: string | null;
  readonly flooding: Flooding | null;
  readonly found: string | null;
}

/** What is told of it; what was not asked, or is no longer there, is null. `found` is the newest first. */
export interface TraceTold {
  readonly trace: TraceDocument | null;
  readonly found: readonly FoundDocument[];
  readonly closed: ClosedHuntDocument | null;
}

/** What it is told from: the log up to the condition's moment, and the owner's tables. */
export type TracedFrom = Pick<LoadedBoat, 'boat' | 'entries'> & {
  readonly condition: Condition;
  readonly own: OwnTables;
};

/** All that may be traced: the items, and the engines. */
export function thingsOf(boat: Boat): readonly Traced[] {
  return [...itemsOf(boat), ...boat.engines.map((engine) => ({ ...engine, kind: 'engine' }))];
}

/** The tables a thing aboard can be traced by; none where nothing fits it. */
export function tablesOf({ boat, own }: Pick<TracedFrom, 'boat' | 'own'>, id: string): readonly Table[] {
  const thing = thingsOf(boat).find((one) => one.id === id);
  return thing ? tablesFor(thing, tablesWith(own.tables)) : [];
}

/** What is asked, as the log stands at the condition's moment; in turns, for who has keys to answer meanwhile. */
export function* tracing(from: TracedFrom, asked: TraceAsked): Turns<TraceTold> {
  const { boat, condition, own } = from;
  const { id, flooding } = asked;
  const thing = thingsOf(boat).find((one) => one.id === id);
  if (!thing) return { trace: null, found: [], closed: null };
  const tables = tablesFor(thing, tablesWith(own.tables));
  const known = { boat, condition, beliefs: yield* believingOf(boat, condition, id) };
  const found = foundBefore(known, id, tables);
  yield;
  const wanted = found.find(({ job }) => instant(job.at) === asked.found);
  const before = function* (entry: string): Turns<{ condition: Condition; beliefs: Beliefs }> {
    const made = from.entries.findIndex((one) => one.id === entry);
    const then = conditionAt(boat, from.entries.slice(0, made), Date.parse(from.entries[made]!.at));
    yield;
    return { condition: then, beliefs: yield* believingOf(boat, then, id) };
  };
  const closed = wanted ? closedHuntDocument(yield* closedHunt(known, id, wanted, before)) : null;
  const table = tables.find((one) => one.id === asked.table);
  const trace = table ? traced(known, { thing, table, flooding, troubles: own.troubles }) : null;
  return { trace, found: found.map(foundDocument), closed };
}

/** Of the one thing alone: a trace looks at no other. */
function* believingOf(boat: Boat, condition: Condition, id: string): Turns<Beliefs> {
  const only = <T extends { readonly id: string }>(list: readonly T[]) => list.filter((one) => one.id === id);
  const { fluids, anodes } = boat;
  return yield* believing({ ...boat, fluids: only(fluids), anodes: only(anodes), spares: [] }, condition);
}

function traced(
  known: { readonly boat: Boat; readonly condition: Condition; readonly beliefs: Beliefs },
  asked: {
    readonly thing: Traced;
    readonly table: Table;
    readonly flooding: Flooding | null;
    readonly troubles: OwnTables['troubles'];
  },
): TraceDocument {
  const { boat, condition, beliefs } = known;
  const { thing, table, flooding, troubles } = asked;
  const check = condition.checks.get(thing.id);
  return traceDocument({
    boat: boat.name,
    at: condition.at,
    item: { id: thing.id, kind: thing.kind, name: thing.name },
    trace: traceOf(known, thing.id, table),
    live: liveWith(boat, condition, beliefs.fluids.get(thing.id) ?? null, thing.id),
    pump: check && table.liquid === 'bilge' ? pumpRate(check) : null,
    flooding,
    trouble: troubles.map(sayTrouble),
  });
}
