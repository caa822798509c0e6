import { z } from 'zod';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import type { Content, Given, Reading } from './content.ts';
import type { PlaceForecast, Problem, Step } from './forecast.ts';
import { columnIn, otherColumns } from './hourly-columns.ts';
import { instantFrom } from './iso-time.ts';
import { oddities } from './oddities.ts';
import { tableTroubles } from './table-troubles.ts';

const HOUR = 3_600_000;
/** A value holds until the next one, but no longer than this: what follows is a gap. */
const LONGEST_STEP = 6 * HOUR;
const MOST_HOURS = 2000;
const MOST_TABLES = 100;
const MOST_NAMES = 100;

const tableSchema = z.looseObject(
  {
    latitude: z.number({ error: 'degrees, -90 to 90' }).min(-90).max(90).optional(),
    longitude: z.number({ error: 'degrees, -180 to 180' }).min(-180).max(180).optional(),
    utc_offset_seconds: z.number({ error: 'seconds ahead of UTC' }).min(-64_800).max(64_800).optional(),
    hourly_units: z.record(z.string(), z.string(), { error: 'the unit of each column' }),
    hourly: z.looseObject(
      {
        time: z
          .array(z.union([z.string(), z.number()]), { error: `a list of 1 to ${MOST_HOURS} times` })
          .min(1, { error: 'at least one time' })
          .max(MOST_HOURS, { error: `at most ${MOST_HOURS} times` }),
      },
      { error: 'columns beside a column of times' },
    ),
  },
  { error: 'a table of hours' },
);
type Table = z.output<typeof tableSchema>;

/** Whether a parsed JSON is a table of hours, or a list of them. */
export function isHourly(json: unknown): boolean {
  const first: unknown = Array.isArray(json) ? json[0] : json;
  return typeof first === 'object' && first !== null && 'hourly' in first;
}

/**
 * Reads hourly arrays beside `time`, their units in `hourly_units`; times are local with an offset beside them, in UTC, or seconds since 1970. The position is
 * the one the table gives, which may have moved from where it was asked for. Its issue time it does not say.
 */
export function readHourly(json: unknown, given: Given): Result<Reading> {
  const tables: readonly unknown[] = Array.isArray(json) ? json : [json];
  if (tables.length > MOST_TABLES)
    return bad({
      kind: 'table not understood',
      where: 'the file',
      found: `${tables.length} tables`,
      expected: `at most ${MOST_TABLES}`,
    });
  const read = tables.map((table, i) =>
    readTable(table, tables.length > 1 ? `[${i}].hourly` : 'hourly', given),
  );
  const troubles = read.flatMap((one) => (one.ok ? [] : one.troubles));
  if (troubles.length > 0) return bad(...troubles);
  if (given.issuedAt === undefined) return good({ asks: [{ what: 'issued' }] });
  const values = read.flatMap((one) => (one.ok ? [one.value] : []));
  const content: Content = {
    source: 'json',
    issuer: '',
    issuedAt: new Date(given.issuedAt).toISOString(),
    places: values.map(({ place }) => place),
    notRead: values.flatMap(({ notRead }) => notRead),
    problems: values.flatMap(({ problems }) => problems),
  };
  return good({ content });
}

interface TableRead {
  readonly place: PlaceForecast;
  readonly notRead: Content['notRead'];
  readonly problems: readonly Problem[];
}

function readTable(json: unknown, where: string, given: Given): Result<TableRead> {
  const parsed = tableSchema.safeParse(json);
  if (!parsed.success) return bad(...tableTroubles(parsed.error));
  const table = parsed.data;
  const troubles: Trouble[] = [];
  const times = timesOf(table, where, troubles);
  const columns = columnsOf(table, where, troubles);
  if (troubles.length > 0) return bad(...troubles);
  const { noSea } = columns;
  const steps = times.map((from, i) =>
    stepAt(columns, i, from, times[i + 1] ?? from + (from - (times[i - 1] ?? from - HOUR))),
  );
  const last = steps.findLastIndex(({ wind, seas }) => wind !== null || seas !== null);
  if (last < 0) return bad({ kind: 'no figures' });
  const said = steps.slice(0, last + 1);
  const { latitude, longitude } = table;
  const position =
    latitude === undefined || longitude === undefined ? {} : { at: [latitude, longitude] as const };
  return good({
    place: { place: given.place ?? '', ...position, headlines: [], steps: said },
    notRead: otherColumns(table)
      .slice(0, MOST_NAMES)
      .map((name) => ({ where, text: name.slice(0, 200) })),
    problems: [...(noSea ? [{ kind: 'no sea here', where } as const] : []), ...oddities(said, false)],
  });
}

function timesOf(
  { hourly, utc_offset_seconds: ahead }: Table,
  where: string,
  troubles: Trouble[],
): readonly number[] {
  const times = hourly.time.map((time) =>
    typeof time === 'number' ? time * 1000 : instantFrom(time, ahead ?? null),
  );
  const wrong = times.findIndex((time, i) => !isTime(time) || (i > 0 && time <= (times[i - 1] ?? 0)));
  if (wrong < 0) return times.map((time) => time ?? 0);
  const found = String(hourly.time[wrong]);
  const isLocal = ahead === undefined && instantFrom(found, null) === null && instantFrom(found, 0) !== null;
  const expected = isLocal
    ? 'utc_offset_seconds beside hourly, or times with their offset,'
    : 'a time after the one before it';
  troubles.push({ kind: 'table not understood', where: `${where}.time[${wrong}]`, found, expected });
  return [];
}

/** Forecasts are of this century. */
function isTime(at: number | null): at is number {
  return at !== null && at >= Date.UTC(2000, 0) && at < Date.UTC(2100, 0);
}

function columnsOf(table: Table, where: string, troubles: Trouble[]) {
  const [wind, dir, gust, seas, peak, period, pressure] = (
    ['wind', 'dir', 'gust', 'seas', 'peak', 'period', 'pressure'] as const
  ).map((column) => columnIn(table, column, where, troubles));
  // On land some models have a sea of no height at all.
  const noSea =
    seas?.some((height) => height === 0) === true && seas.every((height) => height === 0 || height === null);
  return { wind, dir, gust, pressure, noSea, ...(noSea ? {} : { seas, peak, period }) };
}

type Values = readonly (number | null)[] | null;

function stepAt(
  columns: { readonly [name: string]: Values | boolean | undefined },
  i: number,
  from: number,
  to: number,
): Step {
  const at = (name: string) => {
    const values = columns[name];
    return Array.isArray(values) ? ((values[i] as number | null | undefined) ?? null) : null;
  };
  const [wind, seas, peak, mean] = [at('wind'), at('seas'), at('peak'), at('period')];
  return {
    from: new Date(from).toISOString(),
    to: new Date(Math.min(to, from + LONGEST_STEP)).toISOString(),
    wind: wind === null ? null : [wind, wind],
    dir: at('dir'),
    gust: at('gust'),
    seas: seas === null ? null : [seas, seas],
    period: peak ?? mean,
    periodKind: peak !== null ? 'peak' : mean !== null ? 'mean' : null,
    pressure: at('pressure'),
    squalls: null,
    how: 'read',
  };
}
