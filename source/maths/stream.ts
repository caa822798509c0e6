import { noiseTable } from './noise.ts';
import { normalQuantile } from './normal-quantile.ts';

/**
 * A stream of chance: the same seed and name give the same values anywhere, and taking more never
 * changes the first ones. One array, one stream: of two arrays filled from one, the second would move with the length of the first.
 */
export interface Stream {
  /** A value in the open interval (0, 1). */
  uniform(): number;
  /** A standard normal value, made from exactly one uniform, so it rises and falls with it. */
  normal(): number;
  /** Fills `out` with the next uniforms. */
  fillUniform(out: Float64Array): void;
  /** Fills `out` with the next standard normals. */
  fillNormal(out: Float64Array): void;
  /** Fills `out`, of even length, with coarse standard normals, two a random word: for large fields that no what-if changes. */
  fillNoise(out: Float32Array): void;
}

/**
 * The stream of that seed and name. Streams of different names or seeds have nothing to do with one another.
 *
 * Generator: "sfc32" (Chris Doty-Humphrey, PractRand, public domain; 128 bits of state, passes PractRand and TestU01).
 */
export function stream(seed: number, name: string): Stream {
  const words = new Words(`${seed}/${name}`);
  return {
    uniform: () => words.uniform(),
    normal: () => normalQuantile(words.uniform()),
    fillUniform(out) {
      for (let i = 0; i < out.length; i += 1) out[i] = words.uniform();
    },
    fillNormal(out) {
      for (let i = 0; i < out.length; i += 1) out[i] = normalQuantile(words.uniform());
    },
    fillNoise: (out) => words.fillNoise(out, noiseTable()),
  };
}

/** Odd multipliers with well-spread bits: fractional parts of the square roots of 2, 3, 5 and 7, the last two raised to odd. */
const multipliers = [0x6a09e667, 0xbb67ae85, 0x3c6ef373, 0xa54ff53b] as const;
const warmingRounds = 16;

/** Four 32-bit words: three stirred, the fourth a counter, so that no cycle is shorter than 2^32. */
class Words {
  private a: number;
  private b: number;
  private c: number;
  private count: number;

  constructor(text: string) {
    this.a = hashed(text, multipliers[0]);
    this.b = hashed(text, multipliers[1]);
    this.c = hashed(text, multipliers[2]);
    this.count = hashed(text, multipliers[3]);
    for (let round = 0; round < warmingRounds; round += 1) this.next();
  }

  next(): number {
    const word = (this.a + this.b + this.count) | 0;
    this.count = (this.count + 1) | 0;
    this.a = this.b ^ (this.b >>> 9);
    this.b = (this.c + (this.c << 3)) | 0;
    this.c = (((this.c << 21) | (this.c >>> 11)) + word) | 0;
    return word;
  }

  /** 52 random bits and a half: exact in a double, never 0 and never 1. */
  uniform(): number {
    const high = this.next() >>> 6;
    const low = this.next() >>> 6;
    return (high * 2 ** 26 + low + 0.5) * 2 ** -52;
  }

  fillNoise(out: Float32Array, values: Float32Array): void {
    // As `next`, on its own variables: two thirds of the time would go into storing the state.
    let { a, b, c, count } = this;
    for (let i = 0; i < out.length; i += 2) {
      const word = (a + b + count) | 0;
      count = (count + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = (((c << 21) | (c >>> 11)) + word) | 0;
      out[i] = values[word & 0xffff]!;
      out[i + 1] = values[word >>> 16]!;
    }
    Object.assign(this, { a, b, c, count });
  }
}

function hashed(text: string, multiplier: number): number {
  let hash = multiplier ^ text.length;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), multiplier);
    hash ^= hash >>> 15;
  }
  return hash;
}
