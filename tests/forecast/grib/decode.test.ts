import { describe, expect, it } from 'vitest';
import { readGrib } from '../../../source/forecast/grib/read.ts';
import { asDateAndTime, expected, gribFile, valueAt, valuesOf } from '../../helpers/grib-files.ts';

/** Of the value: doubles carry 16 digits, and ecCodes multiplies where this divides by a power of ten. */
const RELATIVE = 1e-14;

describe('every value, place and time is what ecCodes reads in the same file', () => {
  it.each(Object.keys(expected))('%s', async (name) => {
    const fields = readGrib(gribFile(name)).messages;
    expect(fields).toHaveLength(expected[name]!.length);
    for (const [i, wanted] of expected[name]!.entries()) {
      const field = fields[i]!;
      expect(asDateAndTime(field.referenceTime)).toBe(wanted.reference);
      expect(asDateAndTime(field.to)).toBe(wanted.valid);
      expect(field.member).toBe(wanted.member);
      const values = await valuesOf(field);
      expect(values).toHaveLength(wanted.points.length);
      const wrong = wanted.points.filter(([lat, lon, value]) => {
        const found = valueAt(values, field, [lat, lon]);
        return value === null
          ? !Number.isNaN(found)
          : !(Math.abs(found - value) <= RELATIVE * Math.max(1, Math.abs(value)));
      });
      expect(wrong.map((point) => [...point, valueAt(values, field, [point[0], point[1]])])).toEqual([]);
    }
  });
});
