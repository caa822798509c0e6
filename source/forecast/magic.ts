const KINDS: readonly (readonly [begins: readonly number[] | string, what: string])[] = [
  ['CDF', 'a NetCDF file'],
  [[0x89, 0x48, 0x44, 0x46], 'a NetCDF or HDF file'],
  ['PK', 'a zip file: unpack it first'],
  [[0x1f, 0x8b], 'a gzip file: unpack it first'],
  ['BZh', 'a bzip2 file: unpack it first'],
  ['%PDF', 'a PDF'],
  [[0x89, 0x50, 0x4e, 0x47], 'a picture'],
  [[0xff, 0xd8, 0xff], 'a picture'],
  ['GIF8', 'a picture'],
];
/** As far as this a GRIB may begin behind the text of a mail. */
const MOST_IN_FRONT = 1_000_000;
/** A text holds next to no zero bytes. */
const LOOKED_AT = 4096;

/** Whether the bytes are a GRIB: `GRIB` at the beginning, or anywhere near it with an edition, 1 or 2, in its place. */
export function isGrib(bytes: Uint8Array): boolean {
  if (begins(bytes, 'GRIB')) return true;
  const end = Math.min(bytes.length - 7, MOST_IN_FRONT);
  for (let at = bytes.indexOf(0x47); at >= 0 && at < end; at = bytes.indexOf(0x47, at + 1)) {
    const edition = bytes[at + 7];
    if (begins(bytes.subarray(at, at + 4), 'GRIB') && (edition === 1 || edition === 2)) return true;
  }
  return false;
}

/** What kind of file the bytes are that is no forecast; null where they may be a text. */
export function foreignKind(bytes: Uint8Array): string | null {
  const known = KINDS.find(([start]) => begins(bytes, start));
  if (known) return known[1];
  const isUtf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const zeros = bytes.subarray(0, LOOKED_AT).filter((byte) => byte === 0).length;
  return zeros > 8 && !isUtf16 ? 'a file of bytes, not of text' : null;
}

function begins(bytes: Uint8Array, start: readonly number[] | string): boolean {
  const wanted = typeof start === 'string' ? [...start].map((letter) => letter.charCodeAt(0)) : start;
  return wanted.every((byte, i) => bytes[i] === byte);
}
