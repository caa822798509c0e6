import { bitmapFor, marks } from './bitmap.ts';
import type { Field, Packed } from './field.ts';
import { type Grid, gridFrom } from './grid.ts';
import { level1 } from './levels.ts';
import { ibm32, signed, unsigned } from './octets.ts';
import { parameter1 } from './parameters.ts';
import { Refused, type Why } from './refused.ts';
import { instantOf, spanOf } from './times.ts';
import { usage } from './use.ts';

/** Where edition 1's sections start, and how short they may be (WMO No. 306, I.2, FM 92 edition 1; octet n of a section is `at + n - 1`). */
const PRODUCT_AT = 8;
const LEAST = { product: 28, grid: 32, bitmap: 6, data: 11 };
const NO_COUNT = 0xffff;
const DEGREE = 1e-3;

/** The field of one whole message of edition 1; refuses what is not read. */
export function readEdition1(message: Uint8Array, number: number): Field {
  const product = productSection(message);
  const flags = product[7]!;
  if (!(flags & 0x80)) throw new Refused({ kind: 'grid', name: `grid number ${product[6]}, not described` });
  const described = sectionAt(message, PRODUCT_AT + product.length, LEAST.grid);
  const grid = gridOf(described);
  const afterGrid = PRODUCT_AT + product.length + described.length;
  const marked = flags & 0x40 ? sectionAt(message, afterGrid, LEAST.bitmap) : null;
  const data = sectionAt(message, afterGrid + (marked?.length ?? 0), LEAST.data);
  const points = grid.columns * grid.rows;
  const packed = packedIn(data, marked && bitmapIn(marked, points), {
    points,
    decimal: signed(product, 26, 2),
  });
  return { ...productOf(product, number), grid, packed };
}

function sectionAt(message: Uint8Array, at: number, least: number): Uint8Array {
  const length = at + 3 <= message.length ? unsigned(message, at, 3) : 0;
  if (length < least || at + length > message.length)
    throw new Refused({ kind: 'damaged', name: 'a section longer than its message' });
  return message.subarray(at, at + length);
}

/** What the product section of a message, whole or not, says. */
export function productAt(message: Uint8Array, number: number): Omit<Field, 'grid' | 'packed'> {
  return productOf(productSection(message), number);
}

function productSection(message: Uint8Array): Uint8Array {
  return sectionAt(message, PRODUCT_AT, LEAST.product);
}

function productOf(product: Uint8Array, message: number): Omit<Field, 'grid' | 'packed'> {
  const centre = product[4]!;
  const [year, month, day, hour, minute] = product.subarray(12, 17);
  const full = (product[24]! - 1) * 100 + year!;
  const referenceTime = instantOf([full, month!, day!, hour!, minute!, 0]);
  const { from, to, statistic, why } = validity(product);
  const parameter = parameter1(centre, product[3]!, product[8]!);
  const level = level1(product[9]!, unsigned(product, 10, 2));
  return {
    ...{ message, edition: 1 as const, centre, parameter, level, referenceTime },
    from: referenceTime + from,
    to: referenceTime + to,
    member: memberOf(product),
    ...usage({ parameter, level, statistic, lead: to, why: why ?? whyNotProduct(product) }),
  };
}

interface Validity {
  readonly from: number;
  readonly to: number;
  readonly statistic: 'average' | 'greatest' | null;
  readonly why: Why | null;
}

/** Code table 5, time range indicator. */
function validity(product: Uint8Array): Validity {
  const [unit, first, second, range] = [product[17]!, product[18]!, product[19]!, product[20]!];
  const at = (count: number) => spanOf(1, unit, count);
  if (range === 0) return { from: at(first), to: at(first), statistic: null, why: null };
  if (range === 1) return { from: 0, to: 0, statistic: null, why: null };
  if (range === 10) {
    const both = at(first * 256 + second);
    return { from: both, to: both, statistic: null, why: null };
  }
  const span = { from: at(first), to: Math.max(at(first), at(second)) };
  if (range === 2) return { ...span, statistic: 'greatest', why: null };
  if (range === 3) return { ...span, statistic: 'average', why: null };
  return { ...span, statistic: null, why: { kind: 'product', name: `time range indicator ${range}` } };
}

/** ECMWF's local definition 1 and NCEP's ensemble extension, octet 41 on. Members perturbed the negative way count below zero. */
function memberOf(product: Uint8Array): number | null {
  const centre = product[4];
  if (product[40] !== 1) return null;
  if (centre === 98 && product.length >= 52 && (product[42] === 10 || product[42] === 11))
    return product[49]!;
  if (centre !== 7 || product.length < 44) return null;
  if (product[41] === 1) return 0;
  if (product[41] === 2) return -product[42]!;
  return product[41] === 3 ? product[42]! : null;
}

/** NCEP's ensemble extension: clusters, probabilities and spreads are no forecast. */
function whyNotProduct(product: Uint8Array): Why | null {
  if (product[4] !== 7 || product[40] !== 1 || product.length < 44) return null;
  if (product[41]! > 3 || product[43]! > 2)
    return { kind: 'product', name: 'a figure drawn from an ensemble' };
  return null;
}

function gridOf(section: Uint8Array): Grid {
  const kind = section[5]!;
  if (kind !== 0) throw new Refused({ kind: 'grid', name: GRIDS_1[kind] ?? `grid of type ${kind}` });
  const [columns, rows] = [unsigned(section, 6, 2), unsigned(section, 8, 2)];
  if (columns === NO_COUNT || rows === NO_COUNT)
    throw new Refused({ kind: 'grid', name: 'a grid whose rows differ in length' });
  const given = (section[16]! & 0x80) !== 0;
  const step = (at: number) => {
    const steps = unsigned(section, at, 2);
    return given && steps !== NO_COUNT && steps > 0 ? steps * DEGREE : null;
  };
  return gridFrom({
    ...{ columns, rows, unitDeg: DEGREE, scanFlags: section[27]! },
    firstLat: signed(section, 10, 3) * DEGREE,
    firstLon: signed(section, 13, 3) * DEGREE,
    lastLat: signed(section, 17, 3) * DEGREE,
    lastLon: signed(section, 20, 3) * DEGREE,
    columnDeg: step(23),
    rowDeg: step(25),
  });
}

/** Code table 6, those that occur. */
const GRIDS_1: Readonly<Record<number, string>> = {
  1: 'Mercator',
  3: 'Lambert conformal',
  4: 'Gaussian',
  5: 'polar stereographic',
  10: 'rotated latitude and longitude',
  14: 'rotated Gaussian',
  50: 'spherical harmonics',
  90: 'space view',
};

function bitmapIn(section: Uint8Array, points: number): Uint8Array | null {
  return bitmapFor(unsigned(section, 4, 2) === 0 ? 0 : 1, section.subarray(6), points);
}

function packedIn(
  data: Uint8Array,
  bitmap: Uint8Array | null,
  { points, decimal }: { points: number; decimal: number },
): Packed {
  const flags = data[3]!;
  if (flags & 0x80) throw new Refused({ kind: 'packing', name: 'spherical harmonics' });
  if (flags & 0x40) throw new Refused({ kind: 'packing', name: 'second-order packing' });
  if (flags & 0x10) throw new Refused({ kind: 'packing', name: 'a matrix of values at each point' });
  return {
    ...{ packing: 'simple', bitmap, decimal },
    count: bitmap ? marks(bitmap, points) : points,
    binary: signed(data, 4, 2),
    reference: ibm32(data, 6),
    bits: data[10]!,
    section5: new Uint8Array(0),
    data: data.subarray(11),
  };
}
