import type { Packed } from './field.ts';
import { unsigned } from './octets.ts';
import { Refused } from './refused.ts';

/** Decodes one JPEG 2000 code stream: the samples of its one component, row by row. Rejects, or resolves to null, where it cannot. Handed in from outside. */
export type DecodeJpeg2000 = (codeStream: Uint8Array) => Promise<ArrayLike<number> | null>;

/** Code stream markers (ITU-T T.800, annex A). */
const START = 0xff4f;
const SIZE = 0xff51;
const SIZE_LENGTH = 41;
/** Samples wider than this come back cut off from the decoder in use. */
const MOST_BITS = 16;

/** Whole numbers X of a JPEG 2000 field (templates 5.40 and 7.40). Its size header is held against the grid before the decoder is let near it. */
export async function unpackJpeg2000(
  { data, count, bits }: Packed,
  decode: DecodeJpeg2000,
): Promise<Float64Array> {
  checkSize(data, { count, bits });
  const samples = await decode(data).catch(() => null);
  if (samples?.length !== count)
    throw new Refused({ kind: 'damaged', name: 'a JPEG 2000 code stream that cannot be decoded' });
  return Float64Array.from(samples);
}

function checkSize(data: Uint8Array, { count, bits }: { count: number; bits: number }): void {
  const whole =
    data.length > SIZE_LENGTH + 4 && unsigned(data, 0, 2) === START && unsigned(data, 2, 2) === SIZE;
  if (!whole) throw new Refused({ kind: 'damaged', name: 'no JPEG 2000 code stream' });
  const [right, bottom, left, top] = [8, 12, 16, 20].map((at) => unsigned(data, at, 4));
  const [components, depth] = [unsigned(data, 40, 2), data[42]!];
  const fits = (right! - left!) * (bottom! - top!) === count && components === 1;
  if (!fits)
    throw new Refused({ kind: 'damaged', name: 'a JPEG 2000 code stream of another size than its grid' });
  if (depth & 0x80 || (depth & 0x7f) + 1 > MOST_BITS || bits > MOST_BITS)
    throw new Refused({ kind: 'packing', name: `JPEG 2000 of ${(depth & 0x7f) + 1} bits` });
}
