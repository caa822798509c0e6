import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Bits } from '../../../source/forecast/grib/bits.ts';
import { ibm32, signed, unsigned } from '../../../source/forecast/grib/octets.ts';
import { Refused } from '../../../source/forecast/grib/refused.ts';

describe('numbers of octets', () => {
  it('have a sign and a magnitude, not a complement', () => {
    expect(signed(Uint8Array.of(0x80, 0x01), 0, 2)).toBe(-1);
    expect(signed(Uint8Array.of(0x00, 0x01), 0, 2)).toBe(1);
    expect(signed(Uint8Array.of(0x81, 0x5f, 0x90), 0, 3)).toBe(-90_000);
    expect(unsigned(Uint8Array.of(0xff, 0xff, 0xff, 0xff), 0, 4)).toBe(2 ** 32 - 1);
  });

  it('of hexadecimal floating point are what IBM System/360 Principles of Operation and its examples say', () => {
    // -118.625, the usual example (from memory): sign 1, exponent 66, fraction 76.A hexadecimal.
    expect(ibm32(Uint8Array.of(0xc2, 0x76, 0xa0, 0x00), 0)).toBe(-118.625);
    expect(ibm32(Uint8Array.of(0x41, 0x10, 0x00, 0x00), 0)).toBe(1);
    expect(ibm32(Uint8Array.of(0x00, 0x00, 0x00, 0x00), 0)).toBe(0);
  });
});

describe('numbers of any width in a row', () => {
  const rows = fc.integer({ min: 1, max: 32 }).chain((width) =>
    fc.record({
      width: fc.constant(width),
      skip: fc.integer({ min: 0, max: 15 }),
      values: fc.array(fc.integer({ min: 0, max: 2 ** width - 1 }), { minLength: 1, maxLength: 40 }),
    }),
  );

  it('come back as they were written, wherever the row begins', () => {
    fc.assert(
      fc.property(rows, ({ width, skip, values }) => {
        const bits = new Bits(
          written('1'.repeat(skip) + values.map((value) => binary(value, width)).join('')),
          skip,
        );
        const out = new Float64Array(values.length);
        bits.fill(out, 0, values.length, width);
        expect([...out]).toEqual(values);
      }),
    );
  });

  it('come back one by one too', () => {
    fc.assert(
      fc.property(rows, ({ width, skip, values }) => {
        const bits = new Bits(
          written('1'.repeat(skip) + values.map((value) => binary(value, width)).join('')),
          skip,
        );
        expect(values.map(() => bits.read(width))).toEqual(values);
      }),
    );
  });

  it('in unary are as many as there are zeros before the one', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1 }), (counts) => {
        const bits = new Bits(written(counts.map((count) => `${'0'.repeat(count)}1`).join('')));
        expect(counts.map(() => bits.zeros())).toEqual(counts);
      }),
    );
  });

  it('are refused where the octets end before them', () => {
    const bits = new Bits(Uint8Array.of(0, 0));
    expect(() => bits.fill(new Float64Array(3), 0, 3, 6)).toThrow(Refused);
    expect(() => new Bits(Uint8Array.of(0, 0)).read(17)).toThrow(Refused);
    expect(() => new Bits(Uint8Array.of(0, 0)).zeros()).toThrow(Refused);
  });
});

function binary(value: number, width: number): string {
  return value.toString(2).padStart(width, '0');
}

function written(bits: string): Uint8Array {
  const full = bits.padEnd(Math.ceil(bits.length / 8) * 8, '0');
  return Uint8Array.from(full.match(/.{8}/g) ?? [], (octet) => Number.parseInt(octet, 2));
}
