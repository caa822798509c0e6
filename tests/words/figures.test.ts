import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instant, six, sixOrNull } from '../../source/words/figures.ts';

describe('a figure of the document', () => {
  it('has at most 6 significant digits and stays within half of the last', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }), (value) => {
        expect(Number(six(value).toPrecision(6))).toBe(six(value));
        expect(Math.abs(six(value) - value)).toBeLessThanOrEqual(Math.abs(value) * 5e-6);
      }),
    );
  });

  it('is never minus nothing, and stays null where there is none', () => {
    expect(Object.is(six(-0), 0)).toBe(true);
    expect(sixOrNull(null)).toBeNull();
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('cannot be %s: that is a fault', (value) => {
    expect(() => six(value)).toThrow('a fault in hoveshort');
  });
});

describe('an instant of the document', () => {
  it('is UTC to the second', () => {
    expect(instant(Date.UTC(2026, 1, 3, 7, 40, 1, 499))).toBe('2026-02-03T07:40:01Z');
    expect(instant(Date.UTC(2026, 1, 3, 7, 40, 59, 500))).toBe('2026-02-03T07:41:00Z');
  });

  it('ends with the year 9999, "never" too', () => {
    expect(instant(Number.POSITIVE_INFINITY)).toBe('9999-12-31T23:59:59Z');
    expect(instant(1e18)).toBe('9999-12-31T23:59:59Z');
  });
});
