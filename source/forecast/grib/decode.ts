import { assert } from '../../trouble.ts';
import { spread } from './bitmap.ts';
import { Bits } from './bits.ts';
import { unpackCcsds } from './ccsds.ts';
import { unpackComplex } from './complex.ts';
import type { Field, Packed } from './field.ts';
import { inOrder } from './grid.ts';
import { unpackIeee } from './ieee.ts';
import { type DecodeJpeg2000, unpackJpeg2000 } from './jpeg2000.ts';
import { Refused } from './refused.ts';

/**
 * The values of a field in the units of its parameter, by rows from north to south, each from west to east; missing ones are not a number.
 * Null where the data is damaged. Only a JPEG 2000 field needs `jpeg2000` and answers with a promise.
 */
export function decode(
  field: Field,
  jpeg2000?: DecodeJpeg2000,
): Float64Array | null | Promise<Float64Array | null> {
  const { packed } = field;
  if (packed.packing !== 'JPEG 2000' || packed.bits === 0)
    return unlessRefused(() => placed(field, numbersOf(packed)));
  assert(jpeg2000, 'a JPEG 2000 field and nothing to decode it with');
  return unpackJpeg2000(packed, jpeg2000).then(
    (numbers) => unlessRefused(() => placed(field, numbers)),
    nullIfRefused,
  );
}

/** The numbers X as packed; of IEEE fields the values themselves. */
function numbersOf(packed: Packed): Float64Array {
  const { packing, count, bits, data } = packed;
  if (packing === 'IEEE') return unpackIeee(packed);
  if (packing === 'complex' || packing === 'complex with differences') return unpackComplex(packed);
  const numbers = new Float64Array(count);
  if (bits === 0) return numbers;
  if (packing === 'CCSDS') return unpackCcsds(packed);
  new Bits(data).fill(numbers, 0, count, bits);
  return numbers;
}

function placed({ packed, grid }: Field, numbers: Float64Array): Float64Array {
  scale(numbers, packed);
  const points = grid.columns * grid.rows;
  const { bitmap } = packed;
  return inOrder(bitmap ? spread(numbers, bitmap, points) : numbers, grid);
}

function scale(numbers: Float64Array, { packing, bits, reference, binary, decimal }: Packed): void {
  if (packing === 'IEEE') return;
  const step = 2 ** binary;
  // Where values have no bits at all encoders store the value itself as reference, whatever the decimal scale; not so where they come in groups.
  const divisor = bits === 0 && !packing.startsWith('complex') ? 1 : 10 ** decimal;
  for (let i = 0; i < numbers.length; i += 1) numbers[i] = (reference + numbers[i]! * step) / divisor;
}

function unlessRefused(read: () => Float64Array): Float64Array | null {
  try {
    return read();
  } catch (error) {
    return nullIfRefused(error);
  }
}

function nullIfRefused(error: unknown): null {
  if (error instanceof Refused) return null;
  throw error;
}
