import type { Boat } from '../boat/boat.ts';
import { conditionAt } from '../condition/condition-at.ts';
import { inOneGo } from '../maths/turns.ts';
import { wallOf } from '../maths/wall-clock.ts';
import type { Table } from '../tracing/table.ts';
import { type Traced, tablesFor, tablesWith } from '../tracing/tables.ts';
import { bad, good, type Result } from '../trouble.ts';
import { cleaned } from '../words/cleaned.ts';
import { instant } from '../words/figures.ts';
import { floodingFrom } from '../words/flooding.ts';
import { closedHuntPage } from '../words/found-page.ts';
import type { Flooding } from '../words/trace-document.ts';
import { tracePage } from '../words/trace-page.ts';
import { type TracedFrom, thingsOf, tracing } from '../words/traced.ts';
import { unknownWord } from '../words/unknown-word.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

export const trace: Command = {
  word: 'trace',
  takes: '<id> [table] [found=<day>] [opening=... depth=... pump=...]',
  says: 'where a loss or a fault comes from: chances, the next best look, the order of repairs',
  more: [
    'Ids are those of boat.json: a fluid, an anode, a check or an engine.',
    'What was looked for: record clue item=<id> clue=<clue> seen=yes, no or "cannot tell".',
    'Work done for a cause: record job item=<id> cause=<cause> text="..."; the readings after it tell,',
    'or record clue item=<id> clue=helped seen=yes or no.',
    'What was found before: found=<day of the work>, or found=newest.',
    'Of a bilge also opening=<size> depth=<under water> pump=<what it moves in an hour by its label: 3000 l, "800 us gal">.',
    'Tables of your own go into the boat folder, in tracing/; schema tracing describes them.',
  ],
  example: 'hoveshort trace gear-oil',
  options: [],
  async run({ words, options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { folder, loaded } = opened.value;
    const fields = new Map(words.filter(isField).map(fieldOf));
    const strange = [...fields.keys()].find((name) => !FIELDS.includes(name));
    if (strange !== undefined) return complainOf([unknownWord('field', strange, FIELDS)], outside);
    const own = await folder.tables();
    const { boat, entries } = loaded;
    const condition = conditionAt(boat, entries, options.at ?? outside.now());
    const from: TracedFrom = { boat, entries, condition, own };
    const asked = words.filter((word) => !isField(word));
    const day = fields.get('found');
    const said = day === undefined ? hunted(from, asked, fields) : foundOn(from, asked, day, outside.zone);
    if (!said.ok) return complainOf([...said.troubles, ...own.troubles], outside);
    const { document, page } = said.value;
    if (options.json) outside.print(jsonText(document));
    else {
      outside.print(page(outside.terminal.columns));
      if (own.troubles.length > 0) complainOf(own.troubles, outside);
    }
    return STATUS.done;
  },
};

interface Said {
  readonly document: object;
  readonly page: (columns: number) => string;
}

const FLOODING_FIELDS = ['opening', 'depth', 'pump'];
const FIELDS = ['found', ...FLOODING_FIELDS];
const FLOODING_EXAMPLE = 'hoveshort trace bilge-pump opening=38mm depth=0.5m pump=3000l';

function isField(word: string): boolean {
  return word.includes('=');
}

function fieldOf(word: string): readonly [string, string] {
  return [word.slice(0, word.indexOf('=')), word.slice(word.indexOf('=') + 1)];
}

/** The hunt as it stands. */
function hunted(
  from: TracedFrom,
  asked: readonly string[],
  fields: ReadonlyMap<string, string>,
): Result<Said> {
  const flooding = floodingOf(fields);
  if (!flooding.ok) return flooding;
  const found = thingAndTable(asked, from.boat, tablesWith(from.own.tables));
  if (!found.ok) return found;
  const { thing, table } = found.value;
  const document = inOneGo(
    tracing(from, { id: thing.id, table: table.id, flooding: flooding.value, found: null }),
  ).trace!;
  return good({ document, page: (columns) => tracePage(cleaned(document), columns) });
}

/** `opening=38mm depth=0.5m pump=3000l`: what comes in, and what a pump that moves so much an hour by its label takes out; null where nothing is asked. */
function floodingOf(fields: ReadonlyMap<string, string>): Result<Flooding | null> {
  if (!FLOODING_FIELDS.some((field) => fields.has(field))) return good(null);
  const [opening, depth] = [fields.get('opening'), fields.get('depth')];
  if (opening === undefined || depth === undefined)
    return bad({ kind: 'wanting', what: 'opening=<size> depth=<under water>', example: FLOODING_EXAMPLE });
  return floodingFrom({ opening, depth, pump: fields.get('pump') ?? null });
}

/** The hunt that work on that day, as the clocks of `zone` had it, closed; of several the newest. */
function foundOn(from: TracedFrom, [id]: readonly string[], day: string, zone: string): Result<Said> {
  const thing = thingNamed(id, from.boat);
  if (!thing.ok) return thing;
  const asked = { id: thing.value.id, table: null, flooding: null, found: null };
  const { found } = inOneGo(tracing(from, asked));
  const dayOf = (at: string) => new Date(wallOf(Date.parse(at), zone)).toISOString().slice(0, 10);
  const hunt = day === NEWEST ? found[0] : found.find(({ at }) => dayOf(at) === day);
  if (!hunt) return bad(unknownWord('closed hunt', day, [...found.map(({ at }) => dayOf(at)), NEWEST]));
  const { closed } = inOneGo(tracing(from, { ...asked, found: hunt.at }));
  const document = {
    format: 1,
    boat: from.boat.name,
    at: instant(from.condition.at),
    item: { id: thing.value.id, kind: thing.value.kind, name: thing.value.name },
    closed: closed!,
  };
  return good({ document, page: (columns) => closedHuntPage(cleaned(document), columns, zone) });
}

const NEWEST = 'newest';

interface Asked {
  readonly thing: Traced;
  readonly table: Table;
}

function thingAndTable(words: readonly string[], boat: Boat, tables: readonly Table[]): Result<Asked> {
  const [id, wanted] = words;
  const named = thingNamed(id, boat);
  if (!named.ok) return named;
  const thing = named.value;
  const fit = tablesFor(thing, tables);
  if (fit.length === 0) {
    const others = thingsOf(boat)
      .filter((one) => tablesFor(one, tables).length > 0)
      .map((one) => one.id);
    return bad({ kind: 'no table', item: thing.id, others });
  }
  const ids = fit.map((table) => table.id);
  if (wanted === undefined && fit.length > 1)
    return bad({
      kind: 'wanting',
      what: `which trouble of it to trace: ${ids.join(' or ')}`,
      example: `hoveshort trace ${thing.id} ${ids[0]}`,
    });
  const table = wanted === undefined ? fit[0] : fit.find((one) => one.id === wanted);
  return table ? good({ thing, table }) : bad(unknownWord('table', wanted!, ids));
}

function thingNamed(id: string | undefined, boat: Boat): Result<Traced> {
  if (id === undefined)
    return bad({ kind: 'wanting', what: 'the id of what to trace', example: trace.example });
  const things = thingsOf(boat);
  const thing = things.find((one) => one.id === id);
  const ids = things.map((one) => one.id);
  return thing ? good(thing) : bad(unknownWord('item', id, ids));
}
