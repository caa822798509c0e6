import { decode } from '../../source/forecast/grib/decode.ts';
import { forecastFromGrib } from '../../source/forecast/grib/forecast-from-grib.ts';
import { readGrib } from '../../source/forecast/grib/read.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';
import { gribFile, gribFileNames } from './grib-files.ts';
import { decodeJpeg2000 } from './jpeg-2000.ts';

const POINTS = [
  { place: 'on the grid', at: [41, -11] },
  { place: 'on the other', at: [37, -27] },
] as const;
const HEADER_OCTETS = 220;
/** Octets damage likes: all bits, none, signs, line ends, the end of a message. */
const TELLING = [0x00, 0xff, 0x7f, 0x80, 0x0a, 0x0d, 0x37, 0xfe, 0x01];

/** The n-th of an endless row of broken GRIB files, the same for the same seed. */
export function mutatedGrib(seed: number, n: number): Uint8Array {
  const chance = stream(seed, `grib ${n}`);
  let octets: Uint8Array = Uint8Array.from(pick(chance, sources()));
  const times = chance.uniform() < 0.8 ? 1 : 2;
  for (let i = 0; i < times; i += 1) octets = pick(chance, MUTATIONS)(octets, chance);
  return octets;
}

/** Takes a file all the way: headers, every field's values, a forecast at two points. */
export async function goThrough(octets: Uint8Array): Promise<void> {
  const file = readGrib(octets);
  for (const field of file.messages) {
    const values = await decode(field, decodeJpeg2000);
    if (values && values.length !== field.grid.columns * field.grid.rows) throw new Error('values missing');
  }
  const read = await forecastFromGrib(file, POINTS, { decodeJpeg: decodeJpeg2000 });
  if (!read.ok) return;
  for (const { steps, members = [] } of read.value.places) {
    for (const { wind = [], seas = [], gust = [] } of members) {
      const figures = [...wind, ...seas, ...gust].map((figure) => figure ?? 0);
      if (!figures.every((figure) => figure >= 0 && Number.isFinite(figure))) throw new Error('not a figure');
    }
    for (const { wind, seas, gust } of steps) {
      const figures = [...(wind ?? []), ...(seas ?? []), gust ?? 0];
      if (!figures.every((figure) => figure >= 0 && Number.isFinite(figure))) throw new Error('not a figure');
    }
  }
}

type Mutation = (octets: Uint8Array, chance: Stream) => Uint8Array;

const MUTATIONS: readonly Mutation[] = [
  // Damage that leaves the message standing, so that what reads headers and values meets it: the most.
  inside,
  inside,
  inside,
  inside,
  inside,
  inside,
  (octets, chance) => scattered(octets, chance, { from: 0, to: Math.min(octets.length, HEADER_OCTETS) }),
  (octets, chance) => scattered(octets, chance, { from: 0, to: octets.length }),
  (octets, chance) => {
    const at = below(chance, Math.max(1, octets.length - 8));
    const value = pick(chance, [0, 1, 2, 0x7fffffff, 0x80000000, 0xffffffff, octets.length, 65535]);
    const out = octets.slice();
    for (let i = 0; i < 4 && at + i < out.length; i += 1) out[at + i] = (value >>> (24 - 8 * i)) & 0xff;
    return out;
  },
  (octets, chance) => octets.subarray(0, below(chance, octets.length + 1)),
  (octets, chance) =>
    joined(octets.subarray(0, below(chance, octets.length)), octets.subarray(below(chance, octets.length))),
  (octets, chance) => joined(octets, pick(chance, sources()).subarray(below(chance, 60))),
  (octets) => octets.map((octet) => octet & 0x7f),
  (octets) => Uint8Array.from([...octets].flatMap((octet) => (octet === 0x0a ? [0x0d, 0x0a] : [octet]))),
];

/** Behind the lengths of an edition 2 message, or in the sections of an edition 1 message; before its end. */
function inside(octets: Uint8Array, chance: Stream): Uint8Array {
  const from = chance.uniform() < 0.5 ? VALUES_AT : SECTIONS_AT;
  return scattered(octets, chance, { from, to: octets.length - 4 });
}

const SECTIONS_AT = 21;
const VALUES_AT = 140;

function scattered(
  octets: Uint8Array,
  chance: Stream,
  { from, to }: { from: number; to: number },
): Uint8Array {
  const out = octets.slice();
  const count = 1 + below(chance, 3);
  for (let i = 0; i < count && from < to; i += 1) {
    out[from + below(chance, to - from)] =
      chance.uniform() < 0.5 ? pick(chance, TELLING) : below(chance, 256);
  }
  return out;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const out = new Uint8Array(a.length + b.length);
  out.set(a);
  out.set(b, a.length);
  return out;
}

function below(chance: Stream, most: number): number {
  return Math.floor(chance.uniform() * most);
}

function pick<T>(chance: Stream, from: readonly T[]): T {
  return from[below(chance, from.length)]!;
}

let all: readonly Uint8Array[] | null = null;

function sources(): readonly Uint8Array[] {
  all ??= gribFileNames().map(gribFile);
  return all;
}
