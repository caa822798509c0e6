import type { Boat } from '../boat/boat.ts';
import { conditionAt } from '../condition/condition-at.ts';
import { believe } from '../inference/believe.ts';
import { inflowLPerMinute, pumpedLPerMinute } from '../tracing/flooding.ts';
import type { Table } from '../tracing/table.ts';
import { type Traced, tablesFor, tablesWith } from '../tracing/tables.ts';
import { bad, good, type Result } from '../trouble.ts';
import { amountFrom } from '../words/amounts.ts';
import { cleaned } from '../words/cleaned.ts';
import { tracePage } from '../words/trace-page.ts';
import { type Flooding, thingsOf, traced } from '../words/traced.ts';
import { unknownWord } from '../words/unknown-word.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

export const trace: Command = {
  word: 'trace',
  takes: '<id> [table] [opening=... depth=... pump=...]',
  says: 'where a loss or a fault comes from: chances, the next best look, the order of repairs',
  more: [
    'Ids are those of boat.json: a fluid, an anode, a check or an engine.',
    'What was looked for: record clue item=<id> clue=<clue> seen=yes, no or "cannot tell".',
    'Work done for a cause: record job item=<id> cause=<cause> text="..."; the readings after it tell.',
    'Of a bilge also opening=<size> depth=<under water> pump=<what it moves in an hour by its label: 3000 l, "800 us gal">.',
    'Tables of your own go into the boat folder, in tracing/; schema tracing describes them.',
  ],
  example: 'hoveshort trace gear-oil',
  options: [],
  async run({ words, options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { folder, loaded } = opened.value;
    const asked = floodingOf(words.filter(isField));
    if (!asked.ok) return complainOf(asked.troubles, outside);
    const own = await folder.tables();
    const found = thingAndTable(
      words.filter((word) => !isField(word)),
      loaded.boat,
      tablesWith(own.tables),
    );
    if (!found.ok) return complainOf([...found.troubles, ...own.troubles], outside);
    const { boat, entries } = loaded;
    const condition = conditionAt(boat, entries, options.at ?? outside.now());
    const beliefs = believe(boat, condition);
    const document = traced(
      { boat, condition, beliefs },
      { ...found.value, flooding: asked.value, troubles: own.troubles },
    );
    if (options.json) outside.print(jsonText(document));
    else {
      outside.print(tracePage(cleaned(document), outside.terminal.columns));
      if (own.troubles.length > 0) complainOf(own.troubles, outside);
    }
    return STATUS.done;
  },
};

function isField(word: string): boolean {
  return word.includes('=');
}

/** `opening=38mm depth=0.5m pump=3000l`: what comes in, and what a pump that moves so much an hour by its label takes out; null where nothing is asked. */
function floodingOf(fields: readonly string[]): Result<Flooding | null> {
  if (fields.length === 0) return good(null);
  const given = new Map(
    fields.map((word) => [word.slice(0, word.indexOf('=')), word.slice(word.indexOf('=') + 1)]),
  );
  const strange = [...given.keys()].find((name) => !FLOODING_FIELDS.includes(name));
  if (strange !== undefined) return bad(unknownWord('field', strange, FLOODING_FIELDS));
  const [opening, depth] = [given.get('opening'), given.get('depth')];
  if (opening === undefined || depth === undefined)
    return bad({ kind: 'wanting', what: 'opening=<size> depth=<under water>', example: FLOODING_EXAMPLE });
  const label = given.get('pump');
  const read = [
    amountFrom(opening, 'mm', 'opening'),
    amountFrom(depth, 'm', 'depth'),
    label === undefined ? good(null) : amountFrom(label, 'L', 'pump', LABEL_L),
  ] as const;
  const troubles = read.flatMap((one) => (one.ok ? [] : one.troubles));
  const [mm, m, pump] = read.map((one) => (one.ok ? one.value : null));
  if (troubles.length > 0 || typeof mm !== 'number' || typeof m !== 'number') return bad(...troubles);
  if (mm < 0 || m < 0 || (typeof pump === 'number' && pump < 0))
    return bad({
      kind: 'not understood',
      field: 'trace',
      text: fields.join(' '),
      expected: 'sizes and a pump of 0 or more',
    });
  return good({
    inflow: inflowLPerMinute(mm, m),
    pumped: typeof pump === 'number' ? pumpedLPerMinute(pump) : null,
  });
}

const FLOODING_FIELDS = ['opening', 'depth', 'pump'];
const FLOODING_EXAMPLE = 'hoveshort trace bilge-pump opening=38mm depth=0.5m pump=3000l';
/** About what a bilge pump moves in an hour, for the unit of a bare number. */
const LABEL_L = 3000;

interface Found {
  readonly thing: Traced;
  readonly table: Table;
}

function thingAndTable(words: readonly string[], boat: Boat, tables: readonly Table[]): Result<Found> {
  const [id, wanted] = words;
  if (id === undefined)
    return bad({ kind: 'wanting', what: 'the id of what to trace', example: trace.example });
  const things = thingsOf(boat);
  const thing = things.find((one) => one.id === id);
  if (!thing)
    return bad(
      unknownWord(
        'item',
        id,
        things.map((one) => one.id),
      ),
    );
  const fit = tablesFor(thing, tables);
  if (fit.length === 0) {
    const others = things.filter((one) => tablesFor(one, tables).length > 0).map((one) => one.id);
    return bad({ kind: 'no table', item: id, others });
  }
  const ids = fit.map((table) => table.id);
  if (wanted === undefined && fit.length > 1)
    return bad({
      kind: 'wanting',
      what: `which trouble of it to trace: ${ids.join(' or ')}`,
      example: `hoveshort trace ${id} ${ids[0]}`,
    });
  const table = wanted === undefined ? fit[0] : fit.find((one) => one.id === wanted);
  return table ? good({ thing, table }) : bad(unknownWord('table', wanted!, ids));
}
