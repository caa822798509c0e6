import { describe, expect, it } from 'vitest';
import { readGrib } from '../../../source/forecast/grib/read.ts';
import { summaryOf } from '../../../source/forecast/grib/summary.ts';
import { gribFile } from '../../helpers/grib-files.ts';

const six = Date.UTC(2026, 1, 3, 6);
const nextDay = Date.UTC(2026, 1, 4, 6);

describe('what a GRIB file holds, by its headers', () => {
  it('is who made it and when, where it reaches, and what it has at which times', () => {
    const { parameters, ...rest } = summaryOf(readGrib(gribFile('forecast')));
    expect(rest).toEqual({
      issuers: ['US National Weather Service, NCEP'],
      issued: [six],
      grids: [
        { south: 36.5, north: 38, west: -28, east: -26, rows: 4, columns: 5, rowDeg: 0.5, columnDeg: 0.5 },
      ],
      members: [],
    });
    const times = { times: 5, from: six, to: nextDay };
    expect(parameters).toEqual([
      { name: 'wind u', level: '10 m', ...times },
      { name: 'wind v', level: '10 m', ...times },
      { name: 'gust', level: 'surface', ...times },
      { name: 'pressure at mean sea level', level: 'mean sea level', ...times },
      { name: 'significant height of wind waves and swell', level: 'surface', ...times },
      { name: 'peak wave period', level: 'surface', ...times },
    ]);
  });

  it('leaves out what is of no use', () => {
    const { parameters } = summaryOf(readGrib(gribFile('swell-parts')));
    expect(parameters.map(({ name }) => name)).toEqual(['significant height of wind waves and swell']);
  });

  it('tells the members of an ensemble', () => {
    expect(summaryOf(readGrib(gribFile('members-2'))).members).toEqual([0, 1, 2]);
  });

  it('of a file of nothing is empty', () => {
    expect(summaryOf(readGrib(new Uint8Array(0)))).toEqual({
      issuers: [],
      issued: [],
      grids: [],
      parameters: [],
      members: [],
    });
  });
});
