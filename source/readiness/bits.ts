/** A set of simulated passages, one bit each. Their number is a multiple of 32. */
export type Bits = Uint32Array;

export function allBits(count: number): Bits {
  return new Uint32Array(count / 32).fill(0xffffffff);
}

export function noBits(count: number): Bits {
  return new Uint32Array(count / 32);
}

/** The passages whose latest departure is not before `hour`. */
export function bitsAt(latest: Float64Array, hour: number): Bits {
  const bits = new Uint32Array(latest.length / 32);
  for (let word = 0, i = 0; word < bits.length; word += 1) {
    let held = 0;
    for (let bit = 0; bit < 32; bit += 1, i += 1) if (latest[i]! >= hour) held |= 1 << bit;
    bits[word] = held;
  }
  return bits;
}

/** Keeps in `into` only what is in `other` too. */
export function keepCommon(into: Bits, other: Bits): void {
  for (let word = 0; word < into.length; word += 1) into[word] = into[word]! & other[word]!;
}

/** How many are in the set (bits counted in parallel within a word). */
export function sizeOf(bits: Bits): number {
  let size = 0;
  for (let word = 0; word < bits.length; word += 1) {
    let v = bits[word]!;
    v -= (v >>> 1) & 0x55555555;
    v = (v & 0x33333333) + ((v >>> 2) & 0x33333333);
    size += Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
  }
  return size;
}
