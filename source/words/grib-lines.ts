import type { Summary } from '../forecast/grib/summary.ts';
import { cleanLine } from './clean.ts';
import { aligned } from './lines.ts';
import { counted, momentWords } from './say.ts';

/** What a GRIB holds by its headers: grids, parameters with their hours, members of an ensemble. */
export function gribLines({ grids, parameters, members }: Summary, zone: string): readonly string[] {
  const moment = (at: number) => momentWords(at, zone, at);
  return [
    'The file holds',
    ...grids.map(
      ({ south, north, west, east, rows, columns, rowDeg, columnDeg }) =>
        `  a grid of ${columns} x ${rows} points, ${latitude(south)} to ${latitude(north)}, ${longitude(west)} to ${longitude(east)}, every ${step(columnDeg)} x ${step(rowDeg)} degrees`,
    ),
    ...aligned(
      parameters.map(({ name, level, times, from, to }) => [
        cleanLine(name),
        cleanLine(level),
        counted(times, 'time', 'times'),
        `${moment(from)} to ${moment(to)}`,
      ]),
    ).map((line) => `  ${line}`),
    ...(members.length > 1
      ? [`  an ensemble of ${members.length} members: the simulated passages meet them in turn`]
      : []),
  ];
}

function latitude(degrees: number): string {
  return `${Math.abs(degrees).toFixed(2)}${degrees < 0 ? 'S' : 'N'}`;
}

function longitude(degrees: number): string {
  const east = ((((degrees + 180) % 360) + 360) % 360) - 180;
  return `${Math.abs(east).toFixed(2)}${east < 0 ? 'W' : 'E'}`;
}

function step(degrees: number): string {
  return String(Number(Math.abs(degrees).toPrecision(3)));
}
