import type { Packed } from './field.ts';
import { view } from './octets.ts';
import { Refused } from './refused.ts';

/** Values as IEEE 754 numbers of 32 or 64 bits (templates 5.4 and 7.4, code table 5.7). */
export function unpackIeee({ section5, count, data }: Packed): Float64Array {
  const precision = section5[11];
  if (precision !== 1 && precision !== 2)
    throw new Refused({ kind: 'packing', name: `IEEE numbers of precision ${precision}` });
  const size = precision * 4;
  if (data.length < size * count)
    throw new Refused({ kind: 'damaged', name: 'fewer values than its header says' });
  const from = view(data);
  return Float64Array.from({ length: count }, (_, i) =>
    precision === 1 ? from.getFloat32(i * size) : from.getFloat64(i * size),
  );
}
