import { type Entry, entriesIn, entryAt, type Facts, type Finding } from './raw.ts';

/** What cannot hold together inside one boat: marks the wrong way round, work that never comes due, legs that do not join. */
export function contradictions(boat: Entry): readonly Finding[] {
  const engines = entriesIn(boat, 'engines').length;
  const units = new Map(entriesIn(boat, 'spares').map(({ fields }) => [fields.id, fields.unit ?? 'each']));
  return [
    ...entriesIn(boat, 'fluids').flatMap((fluid) => [
      ...marksInOrder(fluid),
      ...stockInLitres(fluid, units),
      ...lossOfAnEngine(fluid),
    ]),
    ...entriesIn(boat, 'spares').flatMap((spare) => expectedOneWay(spare, engines)),
    ...entriesIn(boat, 'services').flatMap((service) => comesDue(service, engines)),
    ...entriesIn(boat, 'checks').flatMap(numberAsked),
    ...entriesIn(boat, 'passages').flatMap(legsJoin),
  ];
}

function marksInOrder(fluid: Entry): readonly Finding[] {
  const { full } = fluid.fields;
  const loss = entryAt(fluid.fields.loss, [...fluid.path, 'loss']);
  const remedy = typeof full === 'number' && full > 0 ? wellBelow(full) : null;
  return [
    ...inOrder(fluid, 'low', 'full', { unit: 'litres', remedy, equal: false }),
    ...inOrder(fluid, 'reserve', 'full', { unit: 'litres', remedy, equal: false }),
    ...['perEngineHour', 'perDay'].flatMap((rate) =>
      inOrder(entryAt(loss.fields[rate], [...loss.path, rate]), 'sd', 'wide', {
        unit: rate === 'perDay' ? 'litres a day' : 'litres an engine hour',
        remedy: null,
        equal: true,
      }),
    ),
  ];
}

/** A round figure clearly below the full mark, to show the form; the true one is on the stick. */
function wellBelow(full: number): number {
  return Number((full * 0.7).toPrecision(1));
}

function inOrder(
  { fields, path }: Entry,
  lower: string,
  upper: string,
  { unit, remedy, equal }: { unit: string; remedy: number | null; equal: boolean },
): readonly Finding[] {
  const value = fields[lower];
  const than = fields[upper];
  if (typeof value !== 'number' || typeof than !== 'number') return [];
  if (value < than || (equal && value === than)) return [];
  const facts: Facts = { kind: 'out of order', value, than: { path: upper, value: than }, unit, remedy };
  return [found([...path, lower], facts)];
}

function stockInLitres({ fields, path }: Entry, units: ReadonlyMap<unknown, unknown>): readonly Finding[] {
  const unit = units.get(fields.stock);
  if (typeof fields.stock !== 'string' || unit === undefined || unit === 'L') return [];
  const expected = 'the id of a spare that is kept in litres ("unit": "L")';
  return [found([...path, 'stock'], { kind: 'wrong value', value: fields.stock, expected })];
}

function lossOfAnEngine({ fields, path }: Entry): readonly Finding[] {
  const loss = entryAt(fields.loss, path);
  if (loss.fields.perEngineHour === undefined || fields.engine !== undefined) return [];
  return [missing(path, 'engine', 'the id of the engine whose hours its loss goes by')];
}

function expectedOneWay(spare: Entry, engines: number): readonly Finding[] {
  if (spare.fields.expected === undefined) return [];
  const { fields, path } = entryAt(spare.fields.expected, [...spare.path, 'expected']);
  const byHour = fields.perEngineHour !== undefined;
  const byDay = fields.perDay !== undefined;
  if (byHour && byDay) {
    const expected = 'either perEngineHour or perDay, not both';
    return [found(path, { kind: 'wrong value', value: fields, expected })];
  }
  if (!byHour && !byDay)
    return [
      missing(path, 'perEngineHour', 'a number of uses an engine hour; or perDay, a number of uses a day'),
    ];
  if (byHour && fields.engine === undefined && engines !== 1) {
    return [missing(path, 'engine', 'the id of the engine whose hours count')];
  }
  return [];
}

function comesDue({ fields, path }: Entry, engines: number): readonly Finding[] {
  if (fields.everyHours === undefined && fields.everyMonths === undefined) {
    return [missing(path, 'everyHours', 'a number of engine hours; or everyMonths, a number of months')];
  }
  if (fields.everyHours !== undefined && fields.engine === undefined && engines !== 1) {
    return [missing(path, 'engine', 'the id of the engine whose hours count')];
  }
  return [];
}

function numberAsked(check: Entry): readonly Finding[] {
  const { fields, path } = check;
  const unit = typeof fields.unit === 'string' ? fields.unit : '';
  const order = inOrder(check, 'atLeast', 'atMost', { unit, remedy: null, equal: true });
  const limited = fields.atLeast !== undefined || fields.atMost !== undefined;
  if (!limited || fields.ask === 'number') return order;
  const expected = '"number", for a check with a number to keep to';
  if (fields.ask === undefined) return [...order, missing(path, 'ask', expected)];
  if (fields.ask !== 'yes-no') return order;
  const facts: Facts = { kind: 'wrong value', value: fields.ask, expected, near: '"number"' };
  return [...order, found([...path, 'ask'], facts)];
}

function missing(path: Finding['path'], field: string, expected: string): Finding {
  return found(path, { kind: 'field missing', field, expected });
}

function found(path: Finding['path'], facts: Facts): Finding {
  return { path, facts: () => facts };
}

/** Ends closer than this are one place: about 110 m. */
const SAME_PLACE_DEGREES = 0.001;

function legsJoin(passage: Entry): readonly Finding[] {
  const legs = entriesIn(passage, 'legs');
  return legs.flatMap((leg, i) => {
    const end = positionOf(legs[i - 1]?.fields.to);
    const start = positionOf(leg.fields.from);
    if (!end || !start) return [];
    const north = start[0] - end[0];
    const east = ((start[1] - end[1] + 540) % 360) - 180;
    if (Math.max(Math.abs(north), Math.abs(east)) <= SAME_PLACE_DEGREES) return [];
    const gapNm = 60 * Math.hypot(north, east * Math.cos((end[0] * Math.PI) / 180));
    return [found([...leg.path, 'from'], { kind: 'legs do not join', gapNm })];
  });
}

function positionOf(value: unknown): readonly [number, number] | null {
  if (!Array.isArray(value)) return null;
  const [latitude, longitude]: unknown[] = value;
  return typeof latitude === 'number' && typeof longitude === 'number' ? [latitude, longitude] : null;
}
