import { readdirSync, readFileSync } from 'node:fs';
import { decode } from '../../source/forecast/grib/decode.ts';
import type { Field } from '../../source/forecast/grib/field.ts';
import { modulo } from '../../source/forecast/grib/grid.ts';
import { decodeJpeg2000 } from './jpeg-2000.ts';

const folder = new URL('../forecast/grib/files/', import.meta.url);

/** What ecCodes read in one field of a file: see make-grib-files.py. */
export interface Expected {
  readonly edition: number;
  readonly packing: string;
  /** `20260203 0600`, UTC. */
  readonly reference: string;
  readonly valid: string;
  readonly member: number | null;
  /** Null for a missing value. */
  readonly points: readonly (readonly [lat: number, lon: number, value: number | null])[];
}

export const expected: Readonly<Record<string, readonly Expected[]>> = JSON.parse(
  readFileSync(new URL('expected.json', folder), 'utf8'),
);

/** The octets of one of the project's own GRIB files. */
export function gribFile(name: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(`${name}.grib`, folder)));
}

export function gribFileNames(): readonly string[] {
  return readdirSync(folder).flatMap((name) => (name.endsWith('.grib') ? [name.slice(0, -5)] : []));
}

/** A field's values with the JPEG 2000 decoder at hand. */
export async function valuesOf(field: Field): Promise<Float64Array> {
  const values = await decode(field, decodeJpeg2000);
  if (!values) throw new Error('values damaged');
  return values;
}

/** The value a field has at a position of its grid. */
export function valueAt(
  values: Float64Array,
  { grid }: Field,
  [lat, lon]: readonly [number, number],
): number {
  const row = grid.rows > 1 ? Math.round((grid.north - lat) / grid.rowDeg) : 0;
  const east = modulo(lon - grid.west, 360);
  const column =
    grid.columns > 1 ? Math.round(east / grid.columnDeg) % (grid.round ? grid.columns : Infinity) : 0;
  return values[row * grid.columns + column]!;
}

/** An instant as ecCodes writes it. */
export function asDateAndTime(instant: number): string {
  const [date, time] = new Date(instant).toISOString().split('T');
  return `${date!.replaceAll('-', '')} ${time!.slice(0, 5).replace(':', '')}`;
}
