import { z } from 'zod';
import type { Trouble } from '../trouble.ts';
import { knotsIn, metresIn, tidy } from './units.ts';

/** What a column of an hourly table is of, the names it goes by, what its unit may be, and the range of its values in file units. */
const COLUMNS = {
  /** At 10 m, where forecasts for the sea have it, never higher. */
  wind: {
    names: ['wind_speed_10m', 'windspeed_10m', 'wind_speed'],
    units: 'kn, m/s, km/h or mph',
    range: [0, 250],
  },
  dir: { names: ['wind_direction_10m', 'winddirection_10m', 'wind_direction'], units: '°', range: [0, 360] },
  gust: {
    names: ['wind_gusts_10m', 'windgusts_10m', 'wind_gusts'],
    units: 'kn, m/s, km/h or mph',
    range: [0, 300],
  },
  seas: { names: ['wave_height'], units: 'm or ft', range: [0, 40] },
  peak: { names: ['wave_peak_period'], units: 's', range: [0, 60] },
  period: { names: ['wave_period'], units: 's', range: [0, 60] },
  pressure: { names: ['pressure_msl'], units: 'hPa', range: [850, 1100] },
} as const;
export type Column = keyof typeof COLUMNS;

export interface HourlyArrays {
  readonly hourly: { readonly time: readonly unknown[]; readonly [name: string]: unknown };
  readonly hourly_units: { readonly [name: string]: string };
}

const valuesSchema = z.array(z.number().nullable());
const KNOWN: ReadonlySet<string> = new Set(['time', ...Object.values(COLUMNS).flatMap(({ names }) => names)]);

/** A column in file units; null where the table has none or only nulls in it. What is wrong with it goes to `troubles`. */
export function columnIn(
  table: HourlyArrays,
  column: Column,
  where: string,
  troubles: Trouble[],
): readonly (number | null)[] | null {
  const { names, units, range } = COLUMNS[column];
  const name = names.find((one) => Object.hasOwn(table.hourly, one));
  if (name === undefined) return null;
  const trouble = (found: string, expected: string) => {
    troubles.push({ kind: 'table not understood', where: `${where}.${name}`, found, expected });
    return null;
  };
  const { length } = table.hourly.time;
  const values = valuesSchema.safeParse(table.hourly[name]);
  if (!values.success)
    return trouble('not a list of numbers and nulls', `a list of ${length} numbers or nulls`);
  if (values.data.length !== length)
    return trouble(`${values.data.length} values`, `one for each of the ${length} times`);
  const unit = Object.hasOwn(table.hourly_units, name) ? table.hourly_units[name]! : '';
  const each = factorOf(column, unit.trim().toLowerCase());
  if (each === null) return trouble(unit === '' ? 'no unit in hourly_units' : `the unit "${unit}"`, units);
  const read = values.data.map((value) => (value === null ? null : tidy(value * each)));
  const wrong = read.findIndex((value) => value !== null && !(value >= range[0] && value <= range[1]));
  if (wrong >= 0)
    return trouble(`${read[wrong]} in place ${wrong + 1}`, `a value from ${range[0]} to ${range[1]}`);
  return read.every((value) => value === null) ? null : read;
}

/** Columns that have no place in a forecast of wind and seas: a swell is not the sea, and wind higher up is not the wind at sea. */
export function otherColumns({ hourly }: HourlyArrays): readonly string[] {
  return Object.keys(hourly).filter((name) => !KNOWN.has(name));
}

function factorOf(column: Column, unit: string): number | null {
  const is = (...names: readonly string[]) => (names.includes(unit) ? 1 : null);
  switch (column) {
    case 'wind':
    case 'gust':
      return knotsIn(unit);
    case 'seas':
      return metresIn(unit);
    case 'dir':
      return is('°', 'deg', 'degree', 'degrees');
    case 'peak':
    case 'period':
      return is('s', 'sec', 'second', 'seconds');
    case 'pressure':
      return is('hpa', 'mb', 'mbar');
  }
}
