import type { Entry } from './entries.ts';
import { refusedKeyIn } from './refused-keys.ts';
import { understand } from './understand.ts';

/** CRC-32 of bytes (the polynomial of zlib and PNG), handed in: this folder is pure. */
export type Crc32 = (bytes: Uint8Array) => number;

/** Where a line stands in its writer's chain: its own number, the checksum of the line before, its Lamport count, its own checksum. */
export interface Frame {
  readonly writer: string;
  readonly n: number;
  readonly p: string;
  readonly lc: number;
  readonly crc: string;
}

/** What one line of a log file turned out to be. Only the first two have a place in the chain for certain. An entry carries its own frame. */
export type Line =
  | { readonly how: 'entry'; readonly frame: Entry & Frame }
  | { readonly how: 'newer'; readonly frame: Frame; readonly text: string }
  | { readonly how: 'values'; readonly frame: Frame | null; readonly text: string }
  /** Whole, but not as it was written. It is taken in again under `key`, and from then on no longer told. */
  | { readonly how: 'edited'; readonly frame: null; readonly text: string; readonly key: string }
  | {
      readonly how: 'cut off' | 'checksum' | 'not json' | 'zeros' | 'too long';
      readonly frame: null;
      readonly text: string;
    };

/** The longest line, its LF not counted. */
export const mostLineBytes = 16 * 1024;
/** Lamport counts end here: far beyond any log, well inside exact whole numbers. */
export const mostCount = 2 ** 40;

const mostTextShown = 2000;
const closing = ',"crc":"';
const closingBytes = closing.length + '00000000"}'.length;
const closingCodes = new TextEncoder().encode(closing);
const strictText = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const looseText = new TextDecoder('utf-8', { ignoreBOM: true });
const crcPattern = /^[0-9a-f]{8}$/;
const writerLength = 8;
const idPattern = /^[0-9a-hjkmnp-tv-z]{8}-[1-9]\d{0,11}$/;

/** Reads one line, its LF left off. Never throws: bytes that are not an entry come back as what is wrong with them. */
export function readLine(bytes: Uint8Array, crc32: Crc32): Line {
  const crc = closingCrc(bytes);
  if (
    bytes.length > mostLineBytes ||
    crc === null ||
    crc !== crc32(bytes.subarray(0, bytes.length - closingBytes))
  ) {
    return damaged(bytes, crc32);
  }
  const record = parsed(bytes);
  if (!record || !placed(record)) return { how: 'values', frame: null, text: shown(bytes) };
  const understood = understand(record);
  if (understood === 'newer' || understood === 'values') {
    return { how: understood, frame: record, text: shown(bytes) };
  }
  return { how: 'entry', frame: understood };
}

/** One line with its LF, closed by the checksum of everything before it. `record` must not hold `crc`. */
export function writeLine(
  record: object,
  crc32: Crc32,
): { readonly bytes: Uint8Array; readonly crc: string } {
  const body = new TextEncoder().encode(JSON.stringify(record).slice(0, -1));
  const crc = hex(crc32(body));
  const end = new TextEncoder().encode(`${closing}${crc}"}\n`);
  const bytes = new Uint8Array(body.length + end.length);
  bytes.set(body);
  bytes.set(end, body.length);
  return { bytes, crc };
}

/** A checksum as it is written: 8 lower-case hexadecimal digits. */
function hex(crc: number): string {
  return crc.toString(16).padStart(8, '0');
}

/** The number in an id, with the writer: `k7m2q9xd-118`. */
export function splitId(id: unknown): { readonly writer: string; readonly n: number } | null {
  if (typeof id !== 'string' || !idPattern.test(id)) return null;
  return { writer: id.slice(0, writerLength), n: Number(id.slice(writerLength + 1)) };
}

function closingCrc(bytes: Uint8Array): number | null {
  const start = bytes.length - closingBytes;
  if (start < 1) return null;
  for (let i = 0; i < closingCodes.length; i += 1) {
    if (bytes[start + i] !== closingCodes[i]) return null;
  }
  if (bytes[bytes.length - 2] !== 0x22 || bytes[bytes.length - 1] !== 0x7d) return null;
  let crc = 0;
  for (let i = start + closingCodes.length; i < bytes.length - 2; i += 1) {
    const digit = hexDigit(bytes[i] as number);
    if (digit < 0) return null;
    crc = crc * 16 + digit;
  }
  return crc;
}

function hexDigit(code: number): number {
  if (code >= 0x30 && code <= 0x39) return code - 0x30;
  if (code >= 0x61 && code <= 0x66) return code - 0x61 + 10;
  return -1;
}

function parsed(bytes: Uint8Array): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(strictText.decode(bytes));
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
    return refusedKeyIn(value) === null ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

type Parsed = Record<string, unknown>;

/** Adds `writer` and `n` from the id; false where the frame is not as this program writes it. */
function placed(record: Parsed): record is Parsed & Frame {
  const { id, p, lc } = record;
  const split = splitId(id);
  if (!split || typeof p !== 'string' || !crcPattern.test(p)) return false;
  if (!Number.isInteger(lc) || (lc as number) < 1 || (lc as number) > mostCount) return false;
  record.writer = split.writer;
  record.n = split.n;
  return true;
}

function damaged(bytes: Uint8Array, crc32: Crc32): Line {
  if (bytes.length > mostLineBytes) return { how: 'too long', frame: null, text: shown(bytes) };
  if (bytes.includes(0)) return { how: 'zeros', frame: null, text: shown(bytes) };
  if (parsed(bytes)) {
    return { how: 'edited', frame: null, text: looseText.decode(bytes), key: `edited:${hex(crc32(bytes))}` };
  }
  if (closingCrc(bytes) !== null) return { how: 'checksum', frame: null, text: shown(bytes) };
  return { how: bytes[0] === 0x7b ? 'cut off' : 'not json', frame: null, text: shown(bytes) };
}

function shown(bytes: Uint8Array): string {
  return looseText.decode(bytes.subarray(0, mostTextShown));
}
