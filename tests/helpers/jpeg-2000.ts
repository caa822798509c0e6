import { createRequire } from 'node:module';
import { jpeg2000In } from '../../source/files/jpeg-2000.ts';

/** The program's own JPEG 2000 decoder, on the package as it is installed. */
export const decodeJpeg2000 = jpeg2000In(
  createRequire(import.meta.url).resolve('@cornerstonejs/codec-openjpeg/decodewasmjs'),
);
