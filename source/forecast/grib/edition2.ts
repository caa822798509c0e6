import { bitmapFor, marks } from './bitmap.ts';
import type { Field, Packed, Packing } from './field.ts';
import { type Grid, gridFrom } from './grid.ts';
import { ieee32, signed, unsigned } from './octets.ts';
import { product2 } from './product2.ts';
import { Refused, type Why } from './refused.ts';
import { instantOf } from './times.ts';

const FIRST_SECTION = 16;
const END = 0x37373737;
/** Shortest sections 1 to 7 that can be used (WMO No. 306, I.2, FM 92 edition 2; octet n of a section is index n - 1). */
const LEAST = [0, 21, 5, 72, 34, 11, 6, 5];

/** What a message of edition 2 holds: fields, and what of it is not read with the reason. */
interface Read2 {
  readonly fields: Field[];
  readonly refused: { readonly what: string; readonly why: Why }[];
  /** The last product described without its values: where the message ends early, what it was of. */
  unfinished: Omit<Field, 'grid' | 'packed'> | null;
}

/**
 * The fields of a message of edition 2. Sections 2 to 7, 3 to 7 or 4 to 7 may repeat; what is not repeated stays in force.
 * Where a section is damaged or the message cut the fields before stay.
 */
export function readEdition2(message: Uint8Array, number: number): Read2 {
  const found: Read2 = { fields: [], refused: [], unfinished: null };
  attempt(found, '', () => readSections(message, number, found));
  return found;
}

function readSections(message: Uint8Array, number: number, found: Read2): void {
  const held: (Uint8Array | undefined)[] = [];
  let bitmapBefore: Uint8Array | null = null;
  for (const section of sectionsOf(message)) {
    const which = section[4]!;
    held[which] = section;
    if (which === 4) found.unfinished = attempt(found, '', () => headOf(message, held, number));
    if (which === 6) bitmapBefore = section[5] === 0 ? section.subarray(6) : bitmapBefore;
    if (which !== 7) continue;
    const head = found.unfinished;
    const field = head && attempt(found, head.parameter.name, () => fieldOf(head, held, bitmapBefore));
    if (field) found.fields.push(field);
    found.unfinished = null;
  }
  if (found.unfinished) throw new Refused({ kind: 'damaged', name: 'a section missing' });
}

function* sectionsOf(message: Uint8Array): Generator<Uint8Array> {
  let at = FIRST_SECTION;
  while (at + 5 <= message.length) {
    const length = unsigned(message, at, 4);
    if (length === END) return;
    const which = message[at + 4]!;
    if (which < 1 || which > 7 || length < LEAST[which]! || at + length > message.length)
      throw new Refused({ kind: 'damaged', name: `a section ${which} of ${length} octets` });
    yield message.subarray(at, at + length);
    at += length;
  }
}

function headOf(
  message: Uint8Array,
  held: readonly (Uint8Array | undefined)[],
  number: number,
): Omit<Field, 'grid' | 'packed'> {
  const [, identity, , , product] = held;
  if (!identity || !product) throw new Refused({ kind: 'damaged', name: 'a section missing' });
  const [month, day, hour, minute, second] = identity.subarray(14, 19);
  const referenceTime = instantOf([unsigned(identity, 12, 2), month!, day!, hour!, minute!, second!]);
  const centre = unsigned(identity, 5, 2);
  const meaning = identity[11]!;
  const why: Why | null =
    meaning <= 1 ? null : { kind: 'time', name: meaning === 3 ? 'observations' : `time of kind ${meaning}` };
  return product2(product, { message: number, discipline: message[6]!, centre, referenceTime, why });
}

/** A field refused leaves the rest of its message readable. */
function attempt<T>({ refused }: Read2, what: string, read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    refused.push({ what, why: error.why });
    return null;
  }
}

function fieldOf(
  head: Omit<Field, 'grid' | 'packed'>,
  held: readonly (Uint8Array | undefined)[],
  bitmapBefore: Uint8Array | null,
): Field {
  const [, , , described, , represented, marked, values] = held;
  if (!described || !represented || !marked || !values)
    throw new Refused({ kind: 'damaged', name: 'a section missing' });
  const grid = gridOf(described);
  const points = grid.columns * grid.rows;
  const bitmap = bitmapFor(marked[5]!, bitmapBefore, points);
  return { ...head, grid, packed: packedIn(represented, values.subarray(5), bitmap, points) };
}

function gridOf(section: Uint8Array): Grid {
  const template = unsigned(section, 12, 2);
  if (section[5] !== 0) throw new Refused({ kind: 'grid', name: 'a grid not described' });
  if (template !== 0)
    throw new Refused({ kind: 'grid', name: GRIDS_2[template] ?? `grid template 3.${template}` });
  const [columns, rows] = [unsigned(section, 30, 4), unsigned(section, 34, 4)];
  if (section[10] !== 0 || columns === MISSING_4 || rows === MISSING_4)
    throw new Refused({ kind: 'grid', name: 'a grid whose rows differ in length' });
  if (columns * rows !== unsigned(section, 6, 4))
    throw new Refused({ kind: 'damaged', name: 'a grid whose points do not add up' });
  const unitDeg = unitOf(unsigned(section, 38, 4), unsigned(section, 42, 4));
  const flags = section[54]!;
  const step = (at: number, given: number) => {
    const steps = unsigned(section, at, 4);
    return flags & given && steps !== MISSING_4 && steps > 0 ? steps * unitDeg : null;
  };
  return gridFrom({
    ...{ columns, rows, unitDeg, scanFlags: section[71]! },
    firstLat: signed(section, 46, 4) * unitDeg,
    firstLon: signed(section, 50, 4) * unitDeg,
    lastLat: signed(section, 55, 4) * unitDeg,
    lastLon: signed(section, 59, 4) * unitDeg,
    columnDeg: step(63, 0x20),
    rowDeg: step(67, 0x10),
  });
}

const MISSING_4 = 0xffffffff;

/** Millionths of a degree unless the template gives a basic angle and its division. */
function unitOf(angle: number, division: number): number {
  const plain = angle === 0 || angle === MISSING_4 || division === 0 || division === MISSING_4;
  return plain ? 1e-6 : angle / division;
}

/** Code table 3.1, those that occur. */
const GRIDS_2: Readonly<Record<number, string>> = {
  1: 'rotated latitude and longitude',
  2: 'stretched latitude and longitude',
  10: 'Mercator',
  12: 'transverse Mercator',
  20: 'polar stereographic',
  30: 'Lambert conformal',
  31: 'Albers equal area',
  40: 'Gaussian',
  41: 'rotated Gaussian',
  50: 'spherical harmonics',
  90: 'space view',
  100: 'triangular',
  101: 'unstructured',
  140: 'Lambert azimuthal equal area',
};

/** Code table 5.0. */
const PACKINGS_2: Readonly<Record<number, Packing>> = {
  0: 'simple',
  2: 'complex',
  3: 'complex with differences',
  4: 'IEEE',
  40: 'JPEG 2000',
  42: 'CCSDS',
  40000: 'JPEG 2000',
};
const PACKINGS_NOT_READ: Readonly<Record<number, string>> = {
  1: 'a matrix of values at each point',
  41: 'PNG',
  50: 'spectral simple packing',
  51: 'spectral complex packing',
  61: 'simple packing of logarithms',
  200: 'run lengths of levels',
};
/** Shortest section 5 of each packing. */
const LEAST_5: Readonly<Record<Packing, number>> = {
  simple: 21,
  complex: 47,
  'complex with differences': 49,
  IEEE: 12,
  'JPEG 2000': 23,
  CCSDS: 25,
};

function packedIn(section5: Uint8Array, data: Uint8Array, bitmap: Uint8Array | null, points: number): Packed {
  const template = unsigned(section5, 9, 2);
  const packing = PACKINGS_2[template];
  if (!packing)
    throw new Refused({
      kind: 'packing',
      name: PACKINGS_NOT_READ[template] ?? `packing template 5.${template}`,
    });
  const count = unsigned(section5, 5, 4);
  if (section5.length < LEAST_5[packing] || count !== (bitmap ? marks(bitmap, points) : points))
    throw new Refused({ kind: 'damaged', name: 'a count of values that does not fit its grid' });
  const plain = packing === 'IEEE';
  return {
    ...{ packing, count, bitmap, section5, data },
    reference: plain ? 0 : ieee32(section5, 11),
    binary: plain ? 0 : signed(section5, 15, 2),
    decimal: plain ? 0 : signed(section5, 17, 2),
    bits: plain ? 0 : section5[19]!,
  };
}
