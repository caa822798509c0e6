import { describe, expect, it } from 'vitest';
import { type Grid, gridFrom } from '../../../source/forecast/grib/grid.ts';
import { spotOn, taken } from '../../../source/forecast/grib/spot.ts';

const header = { columnDeg: null, rowDeg: null, scanFlags: 0, unitDeg: 1e-6 };

function grid(rows: number, columns: number, corners: readonly [number, number, number, number]): Grid {
  const [firstLat, firstLon, lastLat, lastLon] = corners;
  return gridFrom({ ...header, rows, columns, firstLat, firstLon, lastLat, lastLon });
}

const everywhere = () => true;

describe('a position on a grid', () => {
  const atlantic = grid(21, 31, [30, 285, 20, 300]);

  it.each([
    ['a corner', [30, -75], 0, 0],
    ['the other corner', [20, -60], 20, 30],
    ['between', [25.25, -67.25], 9.5, 15.5],
    ['the same meridian counted the other way', [25.25, 292.75], 9.5, 15.5],
  ] as const)('%s', (_, at, row, column) => {
    const spot = spotOn(atlantic, at)!;
    expect(spot.row).toBeCloseTo(row, 9);
    expect(spot.column).toBeCloseTo(column, 9);
  });

  it.each([
    ['north', [30.01, -70]],
    ['south', [19.99, -70]],
    ['west', [25, -75.01]],
    ['east', [25, -59.99]],
    ['half the world away', [25, 110]],
  ] as const)('just outside to the %s the grid says nothing', (_, at) => {
    expect(spotOn(atlantic, at)).toBeNull();
  });

  it('lies on grids over Greenwich, over the date line and round the world alike', () => {
    const greenwich = grid(3, 5, [51, 359, 49, 3]);
    expect(spotOn(greenwich, [50, -0.5])!.column).toBeCloseTo(0.5, 9);
    expect(spotOn(greenwich, [50, 2.5])!.column).toBeCloseTo(3.5, 9);
    const dateLine = grid(3, 5, [-17, 178, -19, 182]);
    expect(spotOn(dateLine, [-18, -179.5])!.column).toBeCloseTo(2.5, 9);
    const world = grid(3, 12, [30, 0, -30, 330]);
    expect(world.round).toBe(true);
    expect(taken(spotOn(world, [30, -15])!, everywhere)).toEqual({
      points: [11, 0],
      weights: [0.5, 0.5],
      awayNm: 0,
    });
  });

  it('on a grid of one point is that point, half its step around and how far off', () => {
    const one = gridFrom({
      ...header,
      ...{ rows: 1, columns: 1, firstLat: 40, firstLon: 288.75, lastLat: 40, lastLon: 288.75 },
      ...{ rowDeg: 1, columnDeg: 1.25 },
    });
    expect(spotOn(one, [40.51, -71.25])).toBeNull();
    expect(taken(spotOn(one, [40.25, -71.25])!, everywhere)).toEqual({
      points: [0],
      weights: [1],
      awayNm: expect.closeTo(15, 6),
    });
  });
});

describe('what is taken there', () => {
  const box = grid(3, 3, [42, -12, 40, -10]);

  it('between four points of sea is all four, the nearer the more, and the weights make one', () => {
    const { points, weights, awayNm } = taken(spotOn(box, [41.75, -11.5])!, everywhere)!;
    expect(points).toEqual([0, 1, 3, 4]);
    expect(weights).toEqual([0.375, 0.375, 0.125, 0.125]);
    expect(awayNm).toBe(0);
  });

  it('on a point of sea is that point, whatever lies around it', () => {
    expect(taken(spotOn(box, [41, -11])!, (point) => point === 4)).toEqual({
      points: [4],
      weights: [1],
      awayNm: 0,
    });
  });

  it('with land at one corner is the nearest sea alone', () => {
    const found = taken(spotOn(box, [41.9, -11.9])!, (point) => point !== 0)!;
    expect(found.points).toEqual([1]);
    expect(found.awayNm).toBeCloseTo(60 * Math.hypot(0.1, 0.9 * Math.cos((41.95 * Math.PI) / 180)), 6);
  });

  it('with no sea within 60 nm is nothing', () => {
    expect(taken(spotOn(box, [42, -12])!, (point) => point === 8)).toBeNull();
    expect(taken(spotOn(box, [42, -12])!, (point) => point === 3)!.awayNm).toBeCloseTo(60, 6);
  });
});
