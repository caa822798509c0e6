import { Bits } from './bits.ts';
import type { Packed } from './field.ts';
import { unsigned } from './octets.ts';
import { Refused } from './refused.ts';

/** Flags of template 5.42, octet 22 (as the entropy coder numbers them). Byte order and size in memory mean nothing here. */
const SIGNED = 1;
const DIFFERENCES = 8;
const RESTRICTED = 16;
const PADDED = 32;

/** A count of zero blocks said as this runs to the end of its segment. */
const REST_OF_SEGMENT = 5;
const SEGMENT_BLOCKS = 64;
/** Largest pair code of the second extension in use. */
const MOST_PAIR = 90;

interface Settings {
  readonly bits: number;
  readonly idBits: number;
  readonly block: number;
  /** Blocks between reference samples. */
  readonly interval: number;
  readonly differences: boolean;
  readonly padded: boolean;
}

/** Whole numbers X of CCSDS packing (templates 5.42 and 7.42): the adaptive entropy coder of CCSDS 121.0-B-3, lossless data compression. */
export function unpackCcsds(packed: Packed): Float64Array {
  const settings = settingsOf(packed);
  const { block, interval, differences, padded, bits: width } = settings;
  const values = new Float64Array(Math.ceil(packed.count / block) * block);
  const bits = new Bits(packed.data);
  const most = 2 ** width - 1;
  for (let start = 0; start < packed.count; start += block * interval) {
    if (padded) bits.align();
    const end = Math.min(values.length, start + block * interval);
    for (let at = start; at < end; at += readBlocks(bits, values, { at, start, end }, settings)) {}
    if (differences) undo(values, start, end, most);
  }
  return values.subarray(0, packed.count);
}

function settingsOf({ section5, bits }: Packed): Settings {
  const [flags, block, interval] = [section5[21]!, section5[22]!, unsigned(section5, 23, 2)];
  if (flags & SIGNED || bits > 32)
    throw new Refused({ kind: 'packing', name: 'CCSDS of signed or very wide values' });
  if (block < 1 || interval < 1) throw new Refused({ kind: 'damaged', name: 'CCSDS blocks of no size' });
  let idBits = bits <= 8 ? 3 : bits <= 16 ? 4 : 5;
  if (flags & RESTRICTED && bits <= 4) idBits = bits <= 2 ? 1 : 2;
  return {
    ...{ bits, idBits, block, interval },
    differences: (flags & DIFFERENCES) !== 0,
    padded: (flags & PADDED) !== 0,
  };
}

interface Place {
  readonly at: number;
  readonly start: number;
  readonly end: number;
}

/** Reads one coded block, or a run of zero blocks; returns how many values that was. */
function readBlocks(bits: Bits, values: Float64Array, place: Place, settings: Settings): number {
  const { at, start, end } = place;
  const { idBits, block, bits: width, differences } = settings;
  const id = bits.read(idBits);
  if (id === 2 ** idBits - 1) {
    bits.fill(values, at, at + block, width);
    return block;
  }
  const pairs = id === 0 && bits.read(1) === 1;
  const first = differences && at === start ? 1 : 0;
  if (first) values[at] = bits.read(width);
  if (pairs) return readPairs(bits, values, { at, first, block });
  if (id > 0) return readSplit(bits, values, { at, first, block, low: id - 1 });
  const blocks = zeroBlocks(bits.zeros() + 1, (at - start) / block, settings.interval);
  const zeros = Math.min(blocks * block, end - at);
  values.fill(0, at + first, at + zeros);
  return zeros;
}

function zeroBlocks(said: number, blocksBefore: number, interval: number): number {
  if (said === REST_OF_SEGMENT)
    return Math.min(interval - blocksBefore, SEGMENT_BLOCKS - (blocksBefore % SEGMENT_BLOCKS));
  return said > REST_OF_SEGMENT ? said - 1 : said;
}

interface Block {
  readonly at: number;
  readonly first: number;
  readonly block: number;
}

/** Second extension: two small values in one code. */
function readPairs(bits: Bits, values: Float64Array, { at, first, block }: Block): number {
  for (let i = 0; i < block; i += 2) {
    const code = bits.zeros();
    if (code > MOST_PAIR) throw new Refused({ kind: 'damaged', name: 'a CCSDS code out of range' });
    const sum = Math.floor((Math.sqrt(8 * code + 1) - 1) / 2);
    const second = code - (sum * (sum + 1)) / 2;
    if (i > 0 || first === 0) values[at + i] = sum - second;
    values[at + i + 1] = second;
  }
  return block;
}

/** High parts in unary, then the low bits of all. */
function readSplit(
  bits: Bits,
  values: Float64Array,
  { at, first, block, low }: Block & { low: number },
): number {
  for (let i = at + first; i < at + block; i += 1) values[i] = bits.zeros() * 2 ** low;
  for (let i = at + first; low > 0 && i < at + block; i += 1) values[i] = values[i]! + bits.read(low);
  return block;
}

/** Undoes the unit-delay predictor: the first value stands, the others are differences folded to be positive. */
function undo(values: Float64Array, start: number, end: number, most: number): void {
  for (let i = start + 1; i < end; i += 1) {
    const before = values[i - 1]!;
    const folded = values[i]!;
    const near = Math.min(before, most - before);
    const half = folded % 2 === 0 ? folded / 2 : -(folded + 1) / 2;
    const beyond = near === before ? folded - near : near - folded;
    values[i] = before + (folded <= 2 * near ? half : beyond);
  }
}
