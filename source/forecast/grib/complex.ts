import { Bits } from './bits.ts';
import type { Packed } from './field.ts';
import { signed, unsigned } from './octets.ts';
import { Refused } from './refused.ts';

/**
 * Whole numbers X of complex packing (templates 5.2 and 7.2), with spatial differences of order 0 to 2 undone (5.3 and 7.3); missing ones are not a number.
 * WMO No. 306, I.2, FM 92 edition 2, data templates 7.2 and 7.3 with their notes.
 */
export function unpackComplex(packed: Packed): Float64Array {
  const { section5, count, data } = packed;
  if (unsigned(section5, 31, 4) === 0) return new Float64Array(count);
  const differences = packed.packing === 'complex with differences';
  const order = differences ? section5[47]! : 0;
  if (order > 2) throw new Refused({ kind: 'packing', name: `spatial differences of order ${order}` });
  const octets = differences ? section5[48]! : 0;
  const before = order > 0 ? octets * (order + 1) : 0;
  if (octets > 6 || before > data.length) throw damaged('spatial differences cut off');
  const groups = groupsOf(packed, before);
  const values = valuesOf(packed, groups);
  if (values.length !== count) throw damaged('groups whose lengths do not add up');
  if (order > 0 && octets > 0) undo(values, data, { order, octets });
  return values;
}

interface Groups {
  readonly number: number;
  readonly references: Float64Array;
  readonly widths: Float64Array;
  readonly lengths: Float64Array;
  readonly bits: Bits;
}

/** Reference, width and length of every group, and the bits behind them. */
function groupsOf({ section5, data, count, bits: width }: Packed, before: number): Groups {
  const number = unsigned(section5, 31, 4);
  if (number > count) throw damaged('a number of groups that does not fit its values');
  const bits = new Bits(data, before * 8);
  const read = (each: number) => {
    const out = new Float64Array(number);
    bits.fill(out, 0, number, each);
    bits.align();
    return out;
  };
  const references = read(width);
  const widths = read(section5[36]!).map((value) => value + section5[35]!);
  const [least, step] = [unsigned(section5, 37, 4), section5[41]!];
  const lengths = read(section5[46]!).map((value) => value * step + least);
  lengths[number - 1] = unsigned(section5, 42, 4);
  return { number, references, widths, lengths, bits };
}

function valuesOf({ section5, count, bits: wide }: Packed, groups: Groups): Float64Array {
  const { number, references, widths, lengths, bits } = groups;
  if (lengths.reduce((sum, length) => sum + length, 0) !== count)
    throw damaged('groups whose lengths do not add up');
  const missing = section5[22]!;
  if (missing > 2) throw new Refused({ kind: 'packing', name: `missing values of kind ${missing}` });
  const values = new Float64Array(count);
  let at = 0;
  for (let group = 0; group < number; group += 1) {
    const end = at + lengths[group]!;
    const width = widths[group]!;
    const reference = references[group]!;
    bits.fill(values, at, end, width);
    // Ones in all bits stand for missing, one less for missing in a second way; in a group without bits its reference does.
    const top = 2 ** (width === 0 ? wide : width) - 1;
    for (let i = at; i < end; i += 1) {
      const held = width === 0 ? reference : values[i]!;
      const absent = missing > 0 && (held === top || (missing === 2 && held === top - 1));
      values[i] = absent ? Number.NaN : reference + values[i]!;
    }
    at = end;
  }
  return values;
}

/** Undoes first or second differences over the values that are there; the first ones stand before the groups, then the least difference. */
function undo(
  values: Float64Array,
  data: Uint8Array,
  { order, octets }: { order: number; octets: number },
): void {
  const firsts = [signed(data, 0, octets), order === 2 ? signed(data, octets, octets) : 0];
  const least = signed(data, order * octets, octets);
  let [before, last] = [0, 0];
  let seen = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    const undone = seen < order ? firsts[seen]! : value + least + (order === 1 ? last : 2 * last - before);
    values[i] = undone;
    before = last;
    last = undone;
    seen += 1;
  }
}

function damaged(name: string): Refused {
  return new Refused({ kind: 'damaged', name });
}
