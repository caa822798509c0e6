import { describe, expect, it } from 'vitest';
import { areaOf, type GridHeader, gridFrom } from '../../../source/forecast/grib/grid.ts';
import { Refused } from '../../../source/forecast/grib/refused.ts';

const header: GridHeader = {
  ...{ columns: 301, rows: 331, scanFlags: 0, unitDeg: 1e-6 },
  ...{ firstLat: 55, firstLon: 260, lastLat: 0, lastLon: 310 },
  ...{ columnDeg: 0.166667, rowDeg: 0.166667 },
};

/** Why a header is refused; null where it is not. */
function refusal(change: Partial<GridHeader>): string | null {
  try {
    gridFrom({ ...header, ...change });
    return null;
  } catch (error) {
    if (error instanceof Refused) return error.why.name;
    throw error;
  }
}

describe('the grid a header describes', () => {
  it('has the step its corners give, not the rounded one beside them', () => {
    const { columnDeg, rowDeg } = gridFrom(header);
    expect(columnDeg).toBe(50 / 300);
    expect(rowDeg).toBe(55 / 330);
  });

  it('stands the same whichever corner it is given from', () => {
    const north = gridFrom({ ...header, columnDeg: null, rowDeg: null });
    const others = [
      gridFrom({ ...header, scanFlags: 0x40, firstLat: 0, lastLat: 55 }),
      gridFrom({ ...header, scanFlags: 0x80, firstLon: 310, lastLon: 260 }),
      gridFrom({ ...header, scanFlags: 0xc0, firstLat: 0, lastLat: 55, firstLon: 310, lastLon: 260 }),
    ];
    for (const other of others) expect({ ...other, scan: north.scan }).toEqual(north);
    expect(areaOf(north)).toEqual({ south: expect.closeTo(0, 9), north: 55, west: -100, east: -50 });
  });

  it.each([
    ['rows that run against the flag', { scanFlags: 0x40 }],
    ['a step that does not fit the corners', { columnDeg: 0.25 }],
    ['one column of many', { columns: 2 }],
  ])('%s is refused as contradicting itself', (_, change) => {
    expect(refusal(change)).toBe('a grid whose corners, steps and directions disagree');
  });

  it('past a pole is refused', () => {
    expect(refusal({ firstLat: 95, rowDeg: null })).toBe('a grid past a pole');
  });

  it('of no points is refused', () => {
    expect(refusal({ rows: 0 })).toBe('a grid without points');
  });

  it('with rows set off by half a step is refused by name', () => {
    expect(refusal({ scanFlags: 0x08 })).toBe('a grid with rows or columns set off');
  });

  it('is accepted as given', () => {
    expect(refusal({})).toBeNull();
  });
});
