import { describe, expect, it } from 'vitest';
import { gate } from '../../../source/forecast/grib/gates.ts';
import { type Grid, gridFrom } from '../../../source/forecast/grib/grid.ts';

const box: Grid = gridFrom({
  ...{ columns: 5, rows: 5, scanFlags: 0, unitDeg: 1e-6, columnDeg: null, rowDeg: null },
  ...{ firstLat: 44, firstLon: 0, lastLat: 40, lastLon: 4 },
});
const MIDDLE = 12;

function field(value: number, changes: Readonly<Record<number, number>> = {}): Float64Array {
  const values = new Float64Array(25).fill(value);
  for (const [place, changed] of Object.entries(changes)) values[Number(place)] = changed;
  return values;
}

describe('values held against what wind and sea can be', () => {
  it.each([
    ['seas', 2, 31],
    ['seas', 2, -0.5],
    ['wind u', 5, 200],
    ['wind speed', 5, -1],
    ['gust', 5, Number.POSITIVE_INFINITY],
    ['pressure', 101_000, 12],
    ['peak period', 8, 99],
    ['wind direction', 90, 400],
  ] as const)('%s that cannot be become missing and are counted', (quantity, usual, wrong) => {
    const values = field(usual, { [MIDDLE]: wrong });
    expect(gate(values, box, quantity)).toMatchObject({ beyond: 1, worst: wrong, apart: 0 });
    expect([...values].filter(Number.isNaN)).toHaveLength(1);
    expect(values[MIDDLE]).toBeNaN();
  });

  it('leave a hurricane alone: strong winds and steep gradients, none of them standing alone', () => {
    const eye = field(45, { 6: 60, 7: 62, 8: 58, 11: 64, 12: 30, 13: 60, 16: 55, 17: 45, 18: 50 });
    expect(gate(eye, box, 'wind speed')).toEqual({ beyond: 0, worst: 0, apart: 0, most: 0 });
  });

  it.each([
    ['seas', 2, 8],
    ['wind v', 5, 30],
    ['pressure', 101_000, 99_000],
  ] as const)('%s of one point far from all its neighbours are shown and kept', (quantity, usual, odd) => {
    const values = field(usual, { [MIDDLE]: odd });
    expect(gate(values, box, quantity)).toEqual({
      beyond: 0,
      worst: 0,
      apart: 1,
      most: Math.abs(odd - usual),
    });
    expect(values[MIDDLE]).toBe(odd);
  });

  it('land beside the sea is no leap', () => {
    const values = field(3);
    for (let i = 0; i < 10; i += 1) values[i] = Number.NaN;
    expect(gate(values, box, 'seas')).toEqual({ beyond: 0, worst: 0, apart: 0, most: 0 });
  });
});
