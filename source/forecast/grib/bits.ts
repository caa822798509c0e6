import { Refused } from './refused.ts';

/** Widths above this are read by division: 32 bits of shifting hold a value and the 7 bits left of the octet before. */
const MOST_SHIFTED = 24;

/** Most bits of a value this reads; wider integers do not occur in forecasts (a double holds 53). */
const MOST_BITS = 32;

/** Reads whole numbers of any width from octets, most significant bit first. Refuses to read past the end. */
export class Bits {
  private readonly octets: Uint8Array;
  private position: number;

  constructor(octets: Uint8Array, atBit = 0) {
    this.octets = octets;
    this.position = atBit;
  }

  /** To the next whole octet. */
  align(): void {
    this.position = Math.ceil(this.position / 8) * 8;
  }

  /** One value of `width` bits, 0 to `MOST_BITS`. */
  read(width: number): number {
    if (this.position + width > 8 * this.octets.length) throw tooFew();
    let value = 0;
    for (let left = width; left > 0; ) {
      const have = 8 - (this.position & 7);
      const take = Math.min(have, left);
      const octet = this.octets[this.position >>> 3]!;
      value = value * 2 ** take + ((octet >>> (have - take)) & (2 ** take - 1));
      this.position += take;
      left -= take;
    }
    return value;
  }

  /** How many zeros stand before the next one, which is read too. */
  zeros(): number {
    let count = 0;
    for (;;) {
      const octet = this.octets[this.position >>> 3];
      if (octet === undefined) throw tooFew();
      const have = 8 - (this.position & 7);
      const rest = octet & (2 ** have - 1);
      if (rest !== 0) {
        const leading = Math.clz32(rest) - (32 - have);
        this.position += leading + 1;
        return count + leading;
      }
      count += have;
      this.position += have;
    }
  }

  /** Fills `out` from `from` up to, not including, `to` with values of `width` bits, 0 to `MOST_BITS`. */
  fill(out: Float64Array, from: number, to: number, width: number): void {
    const end = this.position + width * (to - from);
    if (width > MOST_BITS) throw new Refused({ kind: 'packing', name: `values of ${width} bits` });
    if (end > 8 * this.octets.length) throw tooFew();
    if (width === 0) out.fill(0, from, to);
    else if (width <= MOST_SHIFTED) this.shift(out, from, to, width);
    else this.divide(out, from, to, width);
    this.position = end;
  }

  private shift(out: Float64Array, from: number, to: number, width: number): void {
    const { octets, position } = this;
    const mask = 2 ** width - 1;
    let next = position >>> 3;
    let held = octets[next]!;
    next += 1;
    let have = 8 - (position & 7);
    for (let i = from; i < to; i += 1) {
      while (have < width) {
        held = (held << 8) | octets[next]!;
        next += 1;
        have += 8;
      }
      have -= width;
      out[i] = (held >>> have) & mask;
    }
  }

  private divide(out: Float64Array, from: number, to: number, width: number): void {
    const { octets, position } = this;
    let next = position >>> 3;
    let have = 8 - (position & 7);
    let held = octets[next]! % 2 ** have;
    next += 1;
    for (let i = from; i < to; i += 1) {
      while (have < width) {
        held = held * 256 + octets[next]!;
        next += 1;
        have += 8;
      }
      have -= width;
      const value = Math.floor(held / 2 ** have);
      held -= value * 2 ** have;
      out[i] = value;
    }
  }
}

function tooFew(): Refused {
  return new Refused({ kind: 'damaged', name: 'fewer values than its header says' });
}
