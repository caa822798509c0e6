/** Big-endian whole number of `count` octets (1 to 6), from 0 up. */
export function unsigned(octets: Uint8Array, at: number, count: number): number {
  let value = 0;
  for (let i = 0; i < count; i += 1) value = value * 256 + octets[at + i]!;
  return value;
}

/** Whole number of `count` octets whose first bit is the sign and the rest the magnitude: GRIB has no two's complement (WMO No. 306, I.2, FM 92, regulation 92.1.5). */
export function signed(octets: Uint8Array, at: number, count: number): number {
  const value = unsigned(octets, at, count);
  const sign = 2 ** (8 * count - 1);
  return value >= sign ? sign - value : value;
}

/** Reference value of edition 2: IEEE 754, 32 bits. */
export function ieee32(octets: Uint8Array, at: number): number {
  return view(octets).getFloat32(at);
}

/** Reference value of edition 1: hexadecimal floating point, 32 bits: sign, 7 bits of exponent of 16 (excess 64), 24 bits of fraction. */
export function ibm32(octets: Uint8Array, at: number): number {
  const first = octets[at]!;
  const size = unsigned(octets, at + 1, 3) * 2 ** (4 * ((first & 0x7f) - 64) - 24);
  return first & 0x80 ? -size : size;
}

export function view(octets: Uint8Array): DataView {
  return new DataView(octets.buffer, octets.byteOffset, octets.byteLength);
}
