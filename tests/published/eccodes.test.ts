import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Field } from '../../source/forecast/grib/field.ts';
import { forecastFromGrib } from '../../source/forecast/grib/forecast-from-grib.ts';
import { areaOf, modulo } from '../../source/forecast/grib/grid.ts';
import type { Quantity } from '../../source/forecast/grib/parameters.ts';
import { readGrib } from '../../source/forecast/grib/read.ts';
import { asDateAndTime, valuesOf } from '../helpers/grib-files.ts';
import { decodeJpeg2000 } from '../helpers/jpeg-2000.ts';

/**
 * Real GRIB files and made ones against what ecCodes 2.28.0 (ECMWF, Debian 12) reads in them: truth.json beside them lists headers, counts, extremes and some points
 * of each message (of files of more than thirty, the first and the last fifteen).
 */
const folder = new URL('../../../shared/checks/forecasts/', import.meta.url);
const present = existsSync(folder);
const title = `../shared/checks/forecasts${present ? '' : ': skipped, not here'}`;

interface Truth {
  readonly edition: number;
  readonly discipline: number | null;
  readonly parameterCategory: number | null;
  readonly parameterNumber: number | null;
  readonly table2Version: number | null;
  readonly indicatorOfParameter: number | null;
  readonly level: number;
  readonly dataDate: number;
  readonly dataTime: number;
  readonly stepRange: string;
  readonly Ni: number;
  readonly Nj: number;
  readonly scanningMode: number;
  readonly n: number;
  readonly nan: number;
  readonly min: number;
  readonly max: number;
  readonly first: readonly [number, number];
  readonly last: readonly [number, number];
  readonly samples: readonly (readonly [number, number | null])[];
}

const HOUR_MS = 3_600_000;
/** Of the value. */
const RELATIVE = 1e-14;
const near = (found: number, wanted: number) =>
  Math.abs(found - wanted) <= RELATIVE * Math.max(1, Math.abs(wanted));

const truths: Readonly<Record<string, readonly Truth[]>> = present
  ? JSON.parse(readFileSync(new URL('truth.json', folder), 'utf8'))
  : {};

describe.skipIf(!present)(`GRIB files as ecCodes 2.28.0 reads them (${title})`, () => {
  it.each(Object.entries(truths))('%s: every header, corner, time and value listed', async (name, truth) => {
    const fields = fieldsIn(name);
    for (const [i, wanted] of truth.entries()) {
      const field = fields[i < 15 || truth.length < 30 ? i : fields.length - truth.length + i]!;
      expect(headerOf(field)).toEqual(wantedHeader(wanted));
      const values = await valuesOf(field);
      const there = values.filter((value) => !Number.isNaN(value));
      expect(values.length - there.length).toBe(wanted.nan);
      const extremes = there.reduce(
        ([min, max], value) => [Math.min(min!, value), Math.max(max!, value)],
        [Infinity, -Infinity],
      );
      expect(near(extremes[0]!, wanted.min) && near(extremes[1]!, wanted.max)).toBe(true);
      const wrong = wanted.samples.filter(([place, value]) => {
        const found = values[placeIn(field, place)]!;
        return value === null ? !Number.isNaN(found) : !near(found, value);
      });
      expect(wrong).toEqual([]);
    }
  });

  it('reads every message of every file', () => {
    const files = readdirSync(folder).filter((name) => truths[name] !== undefined);
    expect(files).toHaveLength(11);
    expect(files.map((name) => fieldsIn(name).length)).toEqual([1, 2, 19, 976, 2, 4, 1, 150, 150, 150, 150]);
  });

  it.each(['gribberish__gfswave.t18z.atlocn.0p16.f001.grib2', 'gribberish_hist__multi_1.nww3.t12z_1.grib2'])(
    '%s: east and north parts agree with speed and direction at every point and time',
    async (name) => {
      const fields = fieldsIn(name);
      const times = [...new Set(fields.map(({ to }) => to))];
      let compared = 0;
      for (const time of times) {
        const [u, v, speed, direction] = await Promise.all(
          (['wind u', 'wind v', 'wind speed', 'wind direction'] as const).map((quantity) =>
            valuesOf(fieldOf(fields, quantity, time)),
          ),
        );
        for (const [i, east] of u!.entries()) {
          if (Number.isNaN(east) !== Number.isNaN(speed![i]!)) expect.fail(`point ${i}: only one is missing`);
          if (Number.isNaN(east)) continue;
          const from = (direction![i]! * Math.PI) / 180;
          // Each is rounded to a hundredth; a direction of a hundredth of a degree moves 50 m/s by as much.
          const apart = Math.hypot(east + speed![i]! * Math.sin(from), v![i]! + speed![i]! * Math.cos(from));
          if (apart > 0.02) expect.fail(`point ${i} at ${time}: ${apart} m/s apart`);
          compared += 1;
        }
      }
      expect(compared).toBeGreaterThan(100);
    },
  );

  it('takes the 61 times of a real wind-and-wave forecast in at its own point, hour by hour', async () => {
    const name = 'gribberish_hist__multi_1.nww3.t12z_1.grib2';
    const file = readGrib(octetsOf(name));
    const read = await forecastFromGrib(file, [{ place: '', at: [41, -71.25] }], {
      decodeJpeg: decodeJpeg2000,
    });
    if (!read.ok) return expect.fail('not taken in');
    const [place] = read.value.places;
    expect(place!.steps).toHaveLength(181);
    const times = [...new Set(file.messages.map(({ to }) => to))];
    expect(times).toHaveLength(61);
    for (const time of times) {
      const step = place!.steps.find(({ from }) => Date.parse(from) === time)!;
      const [seas, speed, direction, period] = await Promise.all(
        (['seas', 'wind speed', 'wind direction', 'peak period'] as const).map(async (quantity) => {
          const field = fieldOf(file.messages, quantity, time);
          return (await valuesOf(field))[0]!;
        }),
      );
      expect(step.seas![0]).toBeCloseTo(seas!, 3);
      expect(Math.abs(step.wind![0] - speed! * 1.943844)).toBeLessThan(0.03);
      expect(Math.abs(modulo(step.dir! - direction! + 180, 360) - 180)).toBeLessThan(1.5);
      expect(step.period).toBeCloseTo(period!, 2);
    }
  });

  it('finds nothing odd in real forecasts', async () => {
    const kinds = new Set<string>();
    for (const name of Object.keys(truths)) {
      const read = await forecastFromGrib(
        readGrib(octetsOf(name)),
        [{ place: '', at: middleOf(fieldsIn(name)[0]!) }],
        {
          decodeJpeg: decodeJpeg2000,
        },
      );
      for (const { kind } of read.ok ? read.value.problems : []) kinds.add(kind);
    }
    expect([...kinds].filter((kind) => !['no gusts', 'no seas', 'no wind'].includes(kind))).toEqual([]);
  });
});

function octetsOf(name: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(name, folder)));
}

function fieldsIn(name: string): readonly Field[] {
  return readGrib(octetsOf(name)).messages;
}

function fieldOf(fields: readonly Field[], quantity: Quantity, time: number): Field {
  return fields.find((field) => field.parameter.quantity === quantity && field.to === time)!;
}

function middleOf({ grid }: Field): readonly [number, number] {
  const { south, north, west } = areaOf(grid);
  return [(south + north) / 2, west + ((grid.columns - 1) * grid.columnDeg) / 2];
}

/** Where ecCodes' n-th value (in the order of the file, rows of any direction) stands in rows from the north. */
function placeIn({ grid }: Field, place: number): number {
  const row = Math.floor(place / grid.columns);
  const column = place % grid.columns;
  return (grid.scan.northward ? grid.rows - 1 - row : row) * grid.columns + column;
}

function headerOf(field: Field): unknown {
  const { edition, parameter, level, referenceTime, to, grid } = field;
  const { south, north, west, east } = areaOf(grid);
  const [top, bottom] = grid.scan.northward ? [south, north] : [north, south];
  return {
    edition,
    code: parameter.code,
    level: level.value ?? 0,
    reference: asDateAndTime(referenceTime),
    hours: (to - referenceTime) / HOUR_MS,
    size: [grid.columns, grid.rows],
    first: [top, modulo(west, 360)].map((degrees) => Number(degrees.toFixed(6))),
    last: [bottom, modulo(east, 360)].map((degrees) => Number(degrees.toFixed(6))),
  };
}

function wantedHeader(wanted: Truth): unknown {
  const { discipline, parameterCategory, parameterNumber, table2Version, indicatorOfParameter } = wanted;
  return {
    edition: wanted.edition,
    code:
      wanted.edition === 2
        ? `${discipline}-${parameterCategory}-${parameterNumber}`
        : `${table2Version}.${indicatorOfParameter}`,
    level: wanted.level,
    reference: `${wanted.dataDate} ${String(wanted.dataTime).padStart(4, '0')}`,
    hours: Number(wanted.stepRange),
    size: [wanted.Ni, wanted.Nj],
    first: [wanted.first[0], modulo(wanted.first[1], 360)],
    last: [wanted.last[0], modulo(wanted.last[1], 360)],
  };
}
