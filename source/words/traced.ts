import { type Boat, itemsOf } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { liveWith } from '../tracing/live-with.ts';
import { pumpRate } from '../tracing/pump.ts';
import type { Table } from '../tracing/table.ts';
import type { Traced } from '../tracing/tables.ts';
import { traceOf } from '../tracing/trace.ts';
import type { Trouble } from '../trouble.ts';
import { type TraceDocument, traceDocument } from './trace-document.ts';
import { sayTrouble } from './troubles.ts';

/** What comes in by an opening, and what a pump takes out, litres a minute; `pumped` null where no pump was named. */
export interface Flooding {
  readonly inflow: number;
  readonly pumped: number | null;
}

/** All that may be traced: the items, and the engines. */
export function thingsOf(boat: Boat): readonly Traced[] {
  return [...itemsOf(boat), ...boat.engines.map((engine) => ({ ...engine, kind: 'engine' }))];
}

/** The trace of a thing aboard by a table, as the log stands at the condition's moment. */
export function traced(
  given: { readonly boat: Boat; readonly condition: Condition; readonly beliefs: Beliefs },
  asked: {
    readonly thing: Traced;
    readonly table: Table;
    readonly flooding: Flooding | null;
    readonly troubles: readonly Trouble[];
  },
): TraceDocument {
  const { boat, condition, beliefs } = given;
  const { thing, table, flooding, troubles } = asked;
  const check = condition.checks.get(thing.id);
  return traceDocument({
    boat: boat.name,
    at: condition.at,
    item: { id: thing.id, kind: thing.kind, name: thing.name },
    trace: traceOf(given, thing.id, table),
    live: liveWith(boat, condition, beliefs.fluids.get(thing.id) ?? null, thing.id),
    pump: check && table.liquid === 'bilge' ? pumpRate(check) : null,
    flooding,
    trouble: troubles.map(sayTrouble),
  });
}
