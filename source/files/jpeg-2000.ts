import { createRequire } from 'node:module';
import type { DecodeJpeg2000 } from '../forecast/grib/jpeg2000.ts';

/** What is used of `@cornerstonejs/codec-openjpeg`, an emscripten build of OpenJPEG. */
interface Codec {
  J2KDecoder: new () => {
    getEncodedBuffer(length: number): Uint8Array;
    decode(): void;
    getFrameInfo(): { bitsPerSample: number };
    getDecodedBuffer(): Uint8Array;
    delete(): void;
  };
}

/** The JPEG 2000 decoder in that file, loaded when first met. It is kept from writing to the terminal, which it otherwise does. */
export function jpeg2000In(file: string): DecodeJpeg2000 {
  let codec: Promise<Codec> | null = null;
  return async (codeStream) => {
    codec ??= createRequire(import.meta.url)(file)({ print: () => {}, printErr: () => {} });
    const decoder = new (await codec!).J2KDecoder();
    try {
      decoder.getEncodedBuffer(codeStream.length).set(codeStream);
      decoder.decode();
      const octets = decoder.getDecodedBuffer().slice();
      return decoder.getFrameInfo().bitsPerSample <= 8 ? octets : new Uint16Array(octets.buffer);
    } finally {
      decoder.delete();
    }
  };
}
