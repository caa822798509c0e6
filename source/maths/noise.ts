import { normalQuantile } from './normal-quantile.ts';

/** Values in the table: as fine as half a random word can choose. */
const SIZE = 65_536;
let table: Float32Array | null = null;

/**
 * Standard normal values at the middles of 65,536 equal shares, in rising order: read at 16 random bits it gives noise several times faster than
 * the quantile, each chance right to 1 in 65,536 and none beyond 4.3 standard deviations.
 */
export function noiseTable(): Float32Array {
  if (table !== null) return table;
  const values = new Float32Array(SIZE);
  for (let i = 0; i < SIZE / 2; i += 1) {
    const z = normalQuantile((i + 0.5) / SIZE);
    values[i] = z;
    values[SIZE - 1 - i] = -z;
  }
  table = values;
  return values;
}
