import { createRequire } from 'node:module';
import type { DecodeJpeg2000 } from '../../source/forecast/grib/jpeg2000.ts';

const require = createRequire(import.meta.url);
let decoder: Promise<DecodeJpeg2000> | null = null;

/** The JPEG 2000 decoder of `@cornerstonejs/codec-openjpeg`, loaded when first met. */
export const decodeJpeg2000: DecodeJpeg2000 = async (codeStream) => {
  decoder ??= load();
  return (await decoder)(codeStream);
};

async function load(): Promise<DecodeJpeg2000> {
  const open = require('@cornerstonejs/codec-openjpeg/decodewasmjs');
  const codec = await open({ print: () => {}, printErr: () => {} });
  return async (codeStream) => {
    const one = new codec.J2KDecoder();
    try {
      one.getEncodedBuffer(codeStream.length).set(codeStream);
      one.decode();
      const { bitsPerSample } = one.getFrameInfo();
      const octets: Uint8Array = one.getDecodedBuffer().slice();
      return bitsPerSample <= 8 ? octets : new Uint16Array(octets.buffer);
    } finally {
      one.delete();
    }
  };
}
