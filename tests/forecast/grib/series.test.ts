import { describe, expect, it } from 'vitest';
import type { Stream } from '../../../source/forecast/grib/layers.ts';
import { partsAt, type Sample, seriesOf } from '../../../source/forecast/grib/series.ts';

const H = 3_600_000;
const newest: Stream = { referenceTime: 12 * H, atTenMetres: true, cellDeg2: 0.25 };
const older: Stream = { referenceTime: 0, atTenMetres: true, cellDeg2: 0.25 };
const coarse: Stream = { referenceTime: 12 * H, atTenMetres: true, cellDeg2: 1 };

function sample(hours: number, value: number, stream = newest, until = hours): Sample {
  return { from: hours * H, to: until * H, parts: [value], awayNm: 0, stream };
}

describe('values in time', () => {
  it('go straight from one to the next and end with the last', () => {
    const series = seriesOf([sample(18, 4), sample(12, 1), sample(24, 10)]);
    expect([11, 12, 14, 18, 21, 24, 25].map((hour) => partsAt(series, hour * H)?.[0] ?? null)).toEqual([
      null,
      1,
      2,
      4,
      7,
      10,
      null,
    ]);
  });

  it('are not said in a gap of more than 12 hours', () => {
    const series = seriesOf([sample(12, 1), sample(24, 3), sample(37, 5)]);
    expect(partsAt(series, 18 * H)).toEqual([2]);
    expect(partsAt(series, 30 * H)).toBeNull();
    expect(partsAt(series, 37 * H)).toEqual([5]);
  });

  it('of a span hold through it, the shorter span before the longer', () => {
    const series = seriesOf([
      sample(12, 9, newest, 18),
      sample(12, 5, newest, 15),
      sample(18, 7, newest, 24),
    ]);
    expect([12, 14, 16, 18, 24].map((hour) => partsAt(series, hour * H)![0])).toEqual([5, 5, 9, 7, 7]);
  });

  it('are of the newest run, of the older only before and after it', () => {
    const series = seriesOf([
      ...[6, 12, 18, 24, 30].map((hour) => sample(hour, 100 + hour, older)),
      ...[12, 18, 24].map((hour) => sample(hour, hour)),
    ]);
    expect(series.map(({ parts }) => parts[0])).toEqual([106, 12, 18, 24, 130]);
  });

  it('are of the finer grid where two of one run overlap', () => {
    const series = seriesOf([sample(12, 1, coarse), sample(12, 2), sample(18, 3, coarse)]);
    expect(series.map(({ parts }) => parts[0])).toEqual([2, 3]);
  });
});
