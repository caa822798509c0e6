import type { Entry } from './entries.ts';
import { refusedKeyIn } from './refused-keys.ts';
import { understand } from './understand.ts';

/** CRC-32 of bytes, or of a text's UTF-8 (the polynomial of zlib and PNG), handed in: this folder is pure. */
export type Crc32 = (bytes: Uint8Array | string) => number;

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
/** A character of a text takes at most so many bytes in UTF-8. */
const mostCharacterBytes = 3;
/** Lamport counts end here: far beyond any log, well inside exact whole numbers. */
export const mostCount = 2 ** 40;

const mostTextShown = 2000;
const closing = ',"crc":"';
const closingPattern = /,"crc":"[0-9a-f]{8}"\}$/;
const crcDigits = '00000000'.length;
const closingLength = closing.length + crcDigits + '"}'.length;
const strictText = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const looseText = new TextDecoder('utf-8', { ignoreBOM: true });
const utf8 = new TextEncoder();
const hexDigits = '0123456789abcdef';
const crcPattern = /^[0-9a-f]{8}$/;
const writerLength = 8;
const idPattern = /^[0-9a-hjkmnp-tv-z]{8}-[1-9]\d{0,11}$/;

/** Reads one line, its LF left off. Never throws: bytes that are not an entry come back as what is wrong with them. */
export function readLine(bytes: Uint8Array, crc32: Crc32): Line {
  const text = bytes.length > mostLineBytes ? null : textOf(bytes);
  return (text === null ? null : readText(text, crc32)) ?? damaged(bytes, crc32);
}

/** The same of a line of at most `mostLineBytes` whose bytes are sound UTF-8; null where it is damaged, which its bytes tell more of. */
export function readText(text: string, crc32: Crc32): Line | null {
  return checksumOf(text, crc32) === null ? null : lineFrom(parsed(text), text);
}

/**
 * The same of lines one after the other, each with its LF, taken apart in one go, which is faster. Null where one of them is damaged, or is no JSON
 * by itself: they must then be read one by one.
 */
export function readTexts(text: string, crc32: Crc32): readonly Line[] | null {
  const records = allParsed(text);
  if (!records) return null;
  const lines: Line[] = [];
  for (let start = 0, stop = 0; start < text.length; start = stop + 1) {
    stop = text.indexOf('\n', start);
    const line = text.slice(start, stop);
    const crc = line.length * mostCharacterBytes <= mostLineBytes ? checksumOf(line, crc32) : null;
    const record = records[lines.length];
    // Each must be the record of its own line, and not of several that are JSON only together.
    if (crc === null || !isRecord(record) || typeof record.crc !== 'string') return null;
    if (record.crc.length !== crcDigits || !isHexOf(record.crc, 0, crc)) return null;
    lines.push(lineFrom(refusedKeyIn(record) === null ? record : null, line));
  }
  return records.length === lines.length ? lines : null;
}

function allParsed(text: string): readonly unknown[] | null {
  try {
    return JSON.parse(`[${text.slice(0, -1).replaceAll('\n', ',')}]`);
  } catch {
    return null;
  }
}

/** The checksum a line is closed by; null where it is not closed, or what it closes is not what was written. */
function checksumOf(text: string, crc32: Crc32): number | null {
  const end = text.length - closingLength;
  if (end < 1 || !text.startsWith(closing, end) || !text.endsWith('"}')) return null;
  const crc = crc32(text.slice(0, end));
  return isHexOf(text, end + closing.length, crc) ? crc : null;
}

/** A whole line from what stands in it. */
function lineFrom(record: Parsed | null, text: string): Line {
  if (!record || !placed(record)) return { how: 'values', frame: null, text: shown(text) };
  const understood = understand(record);
  if (understood === 'newer' || understood === 'values') {
    return { how: understood, frame: record, text: shown(text) };
  }
  return { how: 'entry', frame: understood };
}

/** One line, closed by the checksum of everything before it: its text, and its bytes with the LF. `record` must not hold `crc`. */
export function writeLine(
  record: object,
  crc32: Crc32,
): { readonly text: string; readonly bytes: Uint8Array; readonly crc: string } {
  const body = JSON.stringify(record).slice(0, -1);
  const crc = hex(crc32(body));
  const text = `${body}${closing}${crc}"}`;
  return { text, bytes: utf8.encode(`${text}\n`), crc };
}

/** Whether a checksum is written at that place of a text. */
function isHexOf(text: string, at: number, crc: number): boolean {
  for (let digit = 7, left = crc; digit >= 0; digit -= 1, left >>>= 4)
    if (text.charCodeAt(at + digit) !== hexDigits.charCodeAt(left & 15)) return false;
  return true;
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

/** Null where the bytes are not UTF-8. */
function textOf(bytes: Uint8Array): string | null {
  try {
    return strictText.decode(bytes);
  } catch {
    return null;
  }
}

function isRecord(value: unknown): value is Parsed {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function parsed(text: string): Parsed | null {
  /** Junk has few brackets, and an error thrown for each of its lines would take most of the time. */
  if (!text.includes('{')) return null;
  try {
    const value: unknown = JSON.parse(text);
    return isRecord(value) && refusedKeyIn(value) === null ? value : null;
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
  const text = looseText.decode(bytes.subarray(0, mostLineBytes));
  if (bytes.length > mostLineBytes) return { how: 'too long', frame: null, text: shown(text) };
  if (isClosed(bytes, text, crc32)) return { how: 'values', frame: null, text: shown(text) };
  if (bytes.includes(0)) return { how: 'zeros', frame: null, text: shown(text) };
  if (textOf(bytes) !== null && parsed(text)) {
    return { how: 'edited', frame: null, text, key: `edited:${hex(crc32(bytes))}` };
  }
  if (closingPattern.test(text)) return { how: 'checksum', frame: null, text: shown(text) };
  return { how: text.startsWith('{') ? 'cut off' : 'not json', frame: null, text: shown(text) };
}

/** Whether its checksum holds all the same: bytes that are no UTF-8 were written as they are. */
function isClosed(bytes: Uint8Array, text: string, crc32: Crc32): boolean {
  const body = bytes.subarray(0, -closingLength);
  return closingPattern.test(text) && isHexOf(text, text.length - '00000000"}'.length, crc32(body));
}

function shown(text: string): string {
  return text.slice(0, mostTextShown);
}
